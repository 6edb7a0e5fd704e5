"""Inputs for every calculator, made from its declaration: ordinary, at the limits, and hostile."""

from __future__ import annotations

import random

from calculators import CALCULATORS
from calculators.declare import Calculator, Input
from calculators.quantities import KINDS, SYSTEMS, convert, plain

HOSTILE = (
    "", "   ", "abc", "gpg 18", "1,5", "1,000", "12,34", "-3", "−3 gpg", "+4", "0", "-0", ".5", "5.",
    "1e3", "1e400", "1e-400", "nan", "inf", "∞", "3/4", "3/0", "1 1/2 in", "1-1/2", "½", "2½ gal",
    "١٢", "１８", "18\u00a0gpg", "\u202e18", "18 parsecs", "18 psi", "18 gpg gpg", "18 GPG.",
    "0x12", "1_000", "1.2.3", "--1", "5 %", "300 ppm", "70 °F", "21 C", "9" * 70, "é" * 30, "🙂 5",
    "<b>5</b>", "'; 5 --", "${5}", "{{ 5 }}", "\\", '"', "None", "True", "5\n6", "5\t gpg", "1e16",
    "0.1", "0.30000000000000004", "1e-9", "123456789", "99999999999 gal",
)  # fmt: skip


def parity_cases(count: int) -> list[dict]:
    """Return `count` cases, always the same ones, spread over all calculators and both systems."""
    chance = random.Random(1913)
    calculators = list(CALCULATORS.values())
    return [
        _case(calculators[number % len(calculators)], SYSTEMS[chance.randrange(2)], chance)
        for number in range(count)
    ]


def _case(calculator: Calculator, units: str, chance: random.Random) -> dict:
    inputs = {}
    for declared in calculator.inputs:
        must_be_answered = declared.choices and declared.example != declared.default
        if must_be_answered or chance.random() < 0.8:  # else what is left out takes its default
            inputs[declared.name] = _good_text(declared, chance)
    for declared in chance.choices(calculator.inputs, k=chance.choice((0, 0, 1, 2))):
        inputs[declared.name] = chance.choice((_limit_text, _hostile_text))(declared, chance)
    return {"calculator": calculator.name, "inputs": inputs, "units": units}


def _good_text(declared: Input, chance: random.Random) -> str:
    if declared.choices:
        return chance.choice((*declared.choices, *[declared.example] * len(declared.choices)))
    low = declared.low if declared.low is not None else 0
    high = declared.high if declared.high is not None else low + 1000
    if declared.example and chance.random() < 0.7:
        near, far = chance.uniform(0.8, 1.3), chance.uniform(0.4, 2.5)
        number = min(max(declared.example * chance.choice((near, far)), low), high)
    else:
        number = chance.uniform(low, high)
    if declared.kind == "count":
        return str(round(number))
    return _written(declared, chance.choice((number, round(number, 2))), chance)


def _limit_text(declared: Input, chance: random.Random) -> str:
    limits = [limit for limit in (declared.low, declared.high) if limit is not None]
    if not limits:
        return _hostile_text(declared, chance)
    factor = chance.choice((1, 1, 1 + 1e-13, 1 - 1e-13, 1.001, 0.999, 10))
    return _written(declared, chance.choice(limits) * factor, chance)


def _hostile_text(declared: Input, chance: random.Random) -> str:
    return chance.choice(HOSTILE)


def _written(declared: Input, number: float, chance: random.Random) -> str:
    """Return the number as somebody may write it: bare, with its unit, with any unit of its kind."""
    ending = ""
    if declared.kind in KINDS and chance.random() < 0.6:
        spelling, unit = chance.choice(list(KINDS[declared.kind].spelled.items()))
        number = convert(number, declared.unit, unit, declared.kind)
        ending = f" {spelling}"
    return chance.choice((repr(float(number)), plain(number), f"{number:.3g}")) + ending
