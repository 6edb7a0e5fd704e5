"""Settings of the property tests, and how the tests ask a calculator."""

import pytest
from hypothesis import settings

from calculators import run

# The same examples on every run, and no judgement of how long one takes.
settings.register_profile("repeatable", derandomize=True, deadline=None, max_examples=150)
settings.load_profile("repeatable")


@pytest.fixture(scope="session")
def answer():
    """Return one answer's number; fail when the calculator refuses."""

    def ask(calculator, output, units="us", **inputs):
        result = run(calculator, inputs, units)
        assert result["problems"] == {}
        return result["values"][output]["number"]

    return ask
