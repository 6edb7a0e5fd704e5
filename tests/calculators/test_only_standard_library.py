"""The package starts fast in a browser: nothing but the standard library, and little of that."""

import subprocess
import sys
from pathlib import Path

import calculators

ASK = """
import sys
before = set(sys.modules)
sys.path.insert(0, sys.argv[1])
from calculators import CALCULATORS, run
for name, calculator in CALCULATORS.items():
    for units in ("us", "metric"):
        given = [one for one in calculator.inputs if one.example is not None]
        run(name, {one.name: one.example for one in given}, units)
        run(name, {"no such input": "3 galons"}, units)
print(sorted({name.partition(".")[0] for name in set(sys.modules) - before}))
"""
SLOW_TO_LOAD = {
    "dataclasses",
    "typing",
    "json",
    "inspect",
    "ast",
    "decimal",
    "fractions",
    "pathlib",
}


def test_only_the_standard_library_is_imported():
    folder = Path(calculators.__file__).parents[1]
    finished = subprocess.run(
        [sys.executable, "-I", "-S", "-c", ASK, folder], capture_output=True, text=True, check=False
    )

    assert finished.stderr == ""
    imported = {name.strip("' ") for name in finished.stdout.strip("[]\n ").split(",")}
    assert "calculators" in imported
    assert imported - {"calculators"} <= sys.stdlib_module_names
    assert imported & SLOW_TO_LOAD == set()
