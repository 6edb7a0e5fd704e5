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
from build_tools.content.handbook import load_handbook
from build_tools.content.problems import summary
from build_tools.edition import Edition

CONFIG = "mkdocs.yml"


def docs_of(config: Path) -> Path:
    """Return the folder of the sources that a mkdocs.yml names."""
    node = yaml.compose(config.read_text("utf-8"))
    pairs = node.value if isinstance(node, yaml.MappingNode) else []
    named = {key.value: value.value for key, value in pairs if isinstance(key, yaml.ScalarNode)}
    return config.parent / str(named.get("docs_dir", "docs"))


def main(folder: str, output: str, date: str, revision: str, word: str) -> int:
    """Write the record, or tell why there is none; return the exit code."""
    root = Path(folder)
    handbook = load_handbook(docs_of(root / CONFIG), root)
    if handbook.problems:
        print(summary(handbook.problems[:3]), file=sys.stderr)
        return 1
    edition = Edition(
        datetime.date.fromisoformat(date), revision, word != "sources", word == "changed"
    )
    write(record_of(handbook, edition), Path(output))
    return 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
