"""Modules and styles are joined, the same each time; what is wrong in a source is told."""

from __future__ import annotations

import subprocess
from pathlib import Path

import pytest

from build_tools.browser import BrowserFilesError
from build_tools.bundling.bundles import CACHE, KEPT, bundles


def written(folder: Path, files: dict[str, str]) -> list[Path]:
    for name, text in files.items():
        (folder / name).write_text(text, encoding="utf-8")
    return [folder / name for name in files]


def test_a_joined_script_runs_and_a_joined_style_keeps_the_order(tmp_path: Path) -> None:
    sources = written(
        tmp_path,
        {
            "first.js": 'import { word } from "./second.js";\nconsole.log(`${word}: é`);\n',
            "second.js": "// A remark.\nexport const word = import.meta.url.split('/').at(-2);\n",
            "a.css": "p { color: red }\n",
            "b.css": "p { color: blue }\n",
        },
    )
    made = bundles({"deep/one": sources[0]}, {"style": sources[2:]}, sources)
    assert sorted(made) == ["deep/one.js", "deep/one.js.map", "style.css", "style.css.map"]
    module = tmp_path / "deep" / "one.mjs"
    module.parent.mkdir()
    module.write_bytes(made["deep/one.js"].read_bytes())
    said = subprocess.run(["node", module], capture_output=True, check=True).stdout
    assert said.decode("utf-8") == "deep: é\n"
    style = made["style.css"].read_text(encoding="utf-8")
    assert style.index("red") < style.index("#00f")
    again = bundles({"deep/one": sources[0]}, {"style": sources[2:]}, sources)
    assert again == made
    written(tmp_path, {"second.js": "export const word = 'changed';\n"})
    changed = bundles({"deep/one": sources[0]}, {"style": sources[2:]}, sources)
    assert "changed" in changed["deep/one.js"].read_text(encoding="utf-8")
    assert len(list(CACHE.iterdir())) <= KEPT


def test_every_fault_of_the_sources_is_told_with_its_place(tmp_path: Path) -> None:
    files = {"one.js": 'import "./none.js";\n', "two.js": "const = 1;\n", "three.css": "p { : }\n"}
    one, two, three = written(tmp_path, files)
    with pytest.raises(BrowserFilesError) as told:
        bundles({"one": one, "two": two}, {"three": [three]}, [one, two, three])
    text = str(told.value)
    assert text.startswith("The scripts of pages could not be joined:\n")
    assert 'Could not resolve "./none.js"' in text
    assert "two.js:1:6" in text
    assert "three.css:1:4" in text
