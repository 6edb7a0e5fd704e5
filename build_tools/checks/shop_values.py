"""What the shop's calculators take from shop.yaml must be what they can use."""

from __future__ import annotations

from collections.abc import Iterator

from build_tools.content.handbook import Handbook
from build_tools.content.problems import Problem
from build_tools.content.values import Values
from calculators import CALCULATORS
from calculators.declare import InputProblem


def check(handbook: Handbook, values: Values) -> Iterator[Problem]:
    """Yield a problem for each value of the shop that a calculator refuses, once for each."""
    if handbook.shop is None:
        return
    told: set[str] = set()
    for calculator in CALCULATORS.values():
        given = values.shop.defaults(calculator)
        for one in calculator.inputs:
            if one.name not in given or one.shop in told:
                continue
            try:
                one.read(given[one.name], values.showing.units)
            except InputProblem as problem:
                told.add(one.shop)
                said = f'the calculator "{calculator.name}" cannot use "{one.shop}": {problem}'
                yield handbook.shop.problem((one.shop,), said)
