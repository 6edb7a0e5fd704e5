"""The package of one sheet: a zip file that learning systems read."""

from __future__ import annotations

import io
import zipfile
from collections.abc import Sequence

from build_tools.class_pack.learning import elements, structure
from build_tools.class_pack.learning.assessment import MANIFEST, TEST_FILE, file_of, manifest, test
from build_tools.class_pack.learning.items import Item

#: The time of every file in a package, so that the same pack has the same bytes.
NO_TIME = (1980, 1, 1, 0, 0, 0)


def files(items: Sequence[Item], sheet: int, title: str) -> dict[str, bytes]:
    """Return the files of a package by their names. Raises ValueError for one against the standard."""
    roots = {
        MANIFEST: (manifest(items, f"class-pack-sheet-{sheet}"), elements.PACKAGE),
        TEST_FILE: (test(items, title), elements.ITEM),
        **{file_of(item): (item.element(), elements.ITEM) for item in items},
    }
    for name, (root, namespace) in roots.items():
        kinds = structure.PACKAGE if namespace == elements.PACKAGE else structure.ITEM
        if found := structure.wrong(root, kinds):
            raise ValueError(f"{name}: {' '.join(found)}")
    return {name: elements.written(*one) for name, one in roots.items()}


def zipped(content: dict[str, bytes]) -> bytes:
    """Return files as one zip file, the same bytes for the same files."""
    made = io.BytesIO()
    with zipfile.ZipFile(made, "w") as package:
        for name, data in content.items():
            entry = zipfile.ZipInfo(name, NO_TIME)
            entry.compress_type = zipfile.ZIP_DEFLATED
            entry.external_attr = 0o644 << 16
            package.writestr(entry, data)
    return made.getvalue()
