"""A new shop: a folder that draws on the shipped handbook and passes its check as it is."""

from __future__ import annotations

import re
import textwrap
from pathlib import Path
from typing import Any

import yaml

from build_tools.content.handbook import Handbook
from build_tools.set_up.failure import Failure
from build_tools.shops.place import LIBRARY
from build_tools.shops.questions import Answers
from build_tools.templates import templates_in

# YAML and Markdown
_ENVIRONMENT = templates_in(
    Path(__file__).parent / "templates", are_html=False, keep_trailing_newline=True
)
#: File of the shop -> its template.
FILES = {
    "mkdocs.yml": "mkdocs.yml.jinja",
    "README.md": "README.md.jinja",
    ".gitignore": "gitignore.jinja",
    "docs_src/shop.yaml": "shop.yaml.jinja",
    "docs_src/facts.yaml": "facts.yaml.jinja",
}
#: What is changed in the file of a unit that begins as a copy.
_TITLES = re.compile(r"^(title|short_title):.*\n", re.MULTILINE)
_FIGURES_FROM = re.compile(r"^figures_from:.*\n(?:[ ]+.*\n)*", re.MULTILINE)
#: What a fact rests on that a shop is likeliest to replace.
_HABIT = "common practice"
_NOT_COMPARED = "the shipped unit's figures, not yet compared with this unit's own sheet"


def _yaml(text: str) -> str:
    """Return a text as it stands after a key."""
    return yaml.safe_dump(text, allow_unicode=True, width=10_000).removesuffix("...\n").strip()


def _comment(text: str) -> str:
    """Return a text as lines of a comment."""
    return textwrap.fill(text, 100, initial_indent="# ", subsequent_indent="# ")


_ENVIRONMENT.filters |= {"yaml": _yaml, "comment": _comment}


def make_room(folder: Path) -> None:
    """Fail where a folder has anything in it, which is never overwritten, or is no place for one."""
    if LIBRARY in (folder, *folder.parents):
        raise Failure(
            f"{folder} is inside the shipped handbook's sources, which would take the shop for "
            "pages of their own: name a folder outside of them."
        )
    if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
        raise Failure(f"{folder} holds something already: name a new folder or an empty one.")


def texts(
    library: Handbook, answers: Answers, carried: list[str], copies: dict[str, str]
) -> dict[str, str]:
    """Return each file of a new shop by its path."""
    fact = next(one for one in library.facts.values() if one.content.basis == _HABIT)
    names: dict[str, Any] = {
        **{name.replace("-", "_"): text for name, text in answers.items()},
        "equipment": [*carried, *copies],
        "shipped": [*library.equipment],
        "cautions": [*library.cautions],
        "habit": _HABIT,
        "pocket_sheet": library.shop.content.pocket_sheet,
        "fact": fact.id,
        "about": fact.content,
    }
    made = {
        place: _ENVIRONMENT.get_template(template).render(names)
        for place, template in FILES.items()
    }
    for name, original in copies.items():
        shipped = library.docs_folder / "equipment" / f"{original}.yaml"
        made[f"docs_src/equipment/{name}.yaml"] = _copy(shipped.read_text("utf-8"), name, original)
    return made


def _copy(text: str, name: str, original: str) -> str:
    title = name.replace("-", " ").capitalize()
    head = (
        f"# Begun as a copy of the shipped unit {original}. Change each figure to that of your "
        "unit's\n# own sheet, and say under figures_from whose it is.\n"
    )
    body = _FIGURES_FROM.sub(f"figures_from: {_NOT_COMPARED}\n", _TITLES.sub("", text))
    return f"{head}title: {_yaml(title)}\n{body}"


def write(folder: Path, files: dict[str, str]) -> None:
    """Write the files of a new shop."""
    make_room(folder)
    for place, text in files.items():
        path = folder / place
        path.parent.mkdir(parents=True, exist_ok=True)
        with path.open("x", encoding="utf-8", newline="\n") as opened:
            opened.write(text)
