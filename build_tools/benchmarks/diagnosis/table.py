"""What the benchmark of the diagnosis found, as tables in text."""

from __future__ import annotations

from typing import Any

_SHARES = ("first", "right", "declared", "calibration", "wrong", "Brier", "log")


def table(measured: dict[str, Any]) -> str:
    """Return one table of all policies, then one per group of faults and per complaint."""
    policies = measured["policies"]
    lines = [_line(f"{measured['calls']} hidden calls, seed {measured['seed']}", policies)]
    names = next(iter(policies.values()))
    for name in names:
        if name != "calls":
            lines.append(_line(f"  {name}", (_cell(name, one[name]) for one in policies.values())))
    fixed = policies["fixed order"]["mean minutes to the cause"]
    ratio = [
        f"{one['mean minutes to the cause'] / fixed:.2f}" if fixed else "-"
        for one in policies.values()
    ]
    lines.append(_line("  mean minutes, of the fixed order's", ratio))
    for title, key in (("group of faults", "groups"), ("complaint", "complaints")):
        lines += ["", _line(title, ("calls", "first", "first three", "minutes", "fixed order"))]
        for name, of_part in measured[key].items():
            engine, other = of_part["engine"], of_part["fixed order"]
            cells = (
                f"{engine['calls']:.0f}",
                f"{engine['first at 5 minutes']:.2f}",
                f"{engine['first three at 5 minutes']:.2f}",
                f"{engine['mean minutes to the cause']:.1f}",
                f"{other['mean minutes to the cause']:.1f}",
            )
            lines.append(_line(f"  {name}", cells))
    return "\n".join(lines)


def _line(first: str, cells) -> str:
    return first.ljust(38) + "".join(cell.rjust(14) for cell in cells)


def _cell(name: str, value: float) -> str:
    return f"{value:.2f}" if name.startswith(_SHARES) else f"{value:.1f}"
