"""The short paths at the head of Learn."""

from __future__ import annotations

from build_tools.content.handbook import Handbook
from build_tools.content.loading import LISTS
from build_tools.content.values import Values
from build_tools.pages.render import Library, Texts, render

ADDRESS = LISTS["paths"][1]


def with_paths(handbook: Handbook, values: Values, library: Library, body: str) -> str:
    """Return what stands on Learn before its lessons: what its author wrote, then the paths."""
    if not handbook.paths:
        return body
    paths = [
        {
            "id": path.id,
            "title": Texts(values, path)(path.content.title),
            "purpose": Texts(values, path)(path.content.purpose),
            "pages": [library.link(ADDRESS, f"{page}.md") for page in path.content.pages],
        }
        for path in handbook.paths.values()
    ]
    return render("paths", body=body, paths=paths)
