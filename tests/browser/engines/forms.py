"""What the tests of all browsers look for in a form."""

from __future__ import annotations

from build_tools.engines.engine import Engine
from calculators import run


def wait_for_answer(engine: Engine, form: str) -> None:
    """Wait until a form shows what Python here answers to the texts in its fields."""
    calculator, units, texts = engine.script(
        """(form) => {
          const section = document.querySelector(form);
          const fields = [...section.querySelectorAll("[data-input]:not([hidden])")];
          const textOf = (field) => field.querySelector("input, select").value;
          return [section.dataset.calculator, section.dataset.units,
            Object.fromEntries(fields.map((field) => [field.dataset.input, textOf(field)]))];
        }""",
        form,
    )
    values = run(calculator, texts, units)["values"]
    engine.wait_for(
        """(form) => Object.fromEntries(
          [...document.querySelectorAll(`${form} [data-output]`)].map(
            (output) => [output.dataset.output, output.querySelector("strong").textContent]))""",
        form,
        value={name: value["shown"] for name, value in values.items()},
    )
