"""The digest of a formula changes with what is worked out, and with nothing else."""

from __future__ import annotations

from pathlib import Path

import pytest

from build_tools.comparing import formulas

FILES = {
    "__init__.py": '"""The door."""\nfrom calculators import water\n',
    "water.py": '"""Water."""\nfrom calculators.units import factor\n\n\n'
    'def setting(iron):\n    """Return it."""\n    return iron * factor  # by the trade\n',
    "units.py": "factor = 4\n",
    "heater.py": "import calculators.units\n\nTANK = 50\n",
    "deep/__init__.py": "",
    "deep/bed.py": "from calculators import heater\n",
}


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Write a package of calculators, and have the digests read it."""
    made = tmp_path / "calculators"
    for name, text in FILES.items():
        (made / name).parent.mkdir(parents=True, exist_ok=True)
        (made / name).write_text(text, "utf-8")
    monkeypatch.setattr(formulas, "FOLDER", made)
    return made


def digests() -> dict[str, str]:
    """Return the digest of each module with what it imports, read anew."""
    for cached in (formulas.digest_of, formulas._imported, formulas._digest_of_file):
        cached.cache_clear()
    names = ("water", "units", "heater", "deep.bed")
    return {name: formulas.digest_of(f"calculators.{name}") for name in names}


@pytest.mark.parametrize(
    ("file", "old", "new", "changed"),
    [
        ("water.py", "  # by the trade", "", set()),
        ("water.py", '"""Return it."""', '"""Return the setting."""', set()),
        ("water.py", '"""Water."""', '"""Raw water."""\n\n', set()),
        ("water.py", "iron * factor", "iron * factor + 1", {"water"}),
        ("units.py", "4", "3", {"water", "units", "heater", "deep.bed"}),
        ("heater.py", "50", "40", {"heater", "deep.bed"}),
        ("__init__.py", "water", "heater", set()),
    ],
)
def test_a_change_counts_where_it_is_used(
    folder: Path, file: str, old: str, new: str, changed: set[str]
) -> None:
    before = digests()
    text = (folder / file).read_text("utf-8")
    assert old in text
    (folder / file).write_text(text.replace(old, new), "utf-8")
    after = digests()
    assert {name for name in before if before[name] != after[name]} == changed
