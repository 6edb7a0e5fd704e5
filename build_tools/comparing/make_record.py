"""Write the record of the handbook in a folder: a process of its own, with that folder's code.

`python -m build_tools.comparing.make_record FOLDER OUTPUT DATE REVISION WORD` is run for each
revision that is compared, so its arguments stay as they are. WORD is "committed", "changed" or
"sources".
"""

from __future__ import annotations

import datetime
import sys
from pathlib import Path

import yaml

from build_tools.comparing.record import record_of, write
from build_tools.edition import Edition
from build_tools.shops.place import LIBRARY
from build_tools.shops.retold import load

CONFIG = "mkdocs.yml"
#: So many problems of sources that cannot be read are told; the command check tells all.
TOLD = 3


def docs_of(config: Path) -> Path:
    """Return the folder of the sources that a mkdocs.yml names, or those that it goes on from."""
    return config.parent / (_plain(_settings(config).get("docs_dir")) or LIBRARY.name)


def library_of(config: Path) -> Path | None:
    """Return the sources that a site draws on by its own mkdocs.yml, if any."""
    plugins = _settings(config).get("plugins")
    handbook = _pairs(plugins).get("handbook") if plugins else None
    draws = _plain(_pairs(handbook).get("draws_on_library")) if handbook else None
    return LIBRARY if draws == "true" else None


def _settings(config: Path) -> dict[str, yaml.Node]:
    """Return the settings as they stand, so that no tag and no variable has to be understood."""
    return _pairs(yaml.compose(config.read_text("utf-8")))


def _pairs(node: yaml.Node | None) -> dict[str, yaml.Node]:
    pairs = node.value if isinstance(node, yaml.MappingNode) else []
    return {key.value: value for key, value in pairs}


def _plain(node: yaml.Node | None) -> str:
    return node.value if isinstance(node, yaml.ScalarNode) else ""


def main(folder: str, output: str, date: str, revision: str, word: str) -> int:
    """Write the record, or tell why there is none; return the exit code."""
    root = Path(folder)
    handbook = load(docs_of(root / CONFIG), root, library_of(root / CONFIG))
    if handbook.problems:
        more = len(handbook.problems) - TOLD
        told = [*map(str, handbook.problems[:TOLD]), *([f"{more} more."] if more > 0 else [])]
        print("\n".join(told), file=sys.stderr)
        return 1
    edition = Edition(
        datetime.date.fromisoformat(date), revision, word != "sources", word == "changed"
    )
    write(record_of(handbook, edition), Path(output))
    return 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
