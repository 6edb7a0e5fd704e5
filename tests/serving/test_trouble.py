"""What kept a build from its end, as the pages list it."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from mkdocs.exceptions import PluginError

from build_tools.content.problems import Problem, choosing, parts
from build_tools.serving.code import start_anew
from build_tools.serving.server import Live
from build_tools.serving.trouble import Told
from tests.serving.shop import contents, copied, live


@pytest.fixture
def shop(tmp_path: Path) -> Iterator[Live]:
    """Hold a copy of the small shop."""
    with live(copied(tmp_path), tmp_path / "served") as made:
        yield made


def append(path: Path, text: str) -> None:
    """Add to a file."""
    path.write_text(path.read_text("utf-8") + text, "utf-8")


def test_every_problem_of_the_sources_is_told_with_its_parts(shop: Live) -> None:
    docs = Path(shop.config.docs_dir)
    append(docs / "index.md", "\nAbout {{ fact.cupp }}.\n")
    append(docs / "checks" / "complaint.yaml", "\nsay: 3 mm\n")
    shop.build()
    assert not shop.state.has_site
    assert (
        Told(
            'there is no fact "cupp"',
            "docs_src/index.md",
            7,
            "one of: calm_water, cup, hot_limit, soft_enough",
            "cup",
        )
        in shop.state.told
    )
    assert {one.file for one in shop.state.told} == {
        "docs_src/index.md",
        "docs_src/checks/complaint.yaml",
    }


def test_problems_leave_the_last_good_site(shop: Live) -> None:
    docs = Path(shop.config.docs_dir)
    shop.build()
    good = contents(shop.folders.shown)
    text = (docs / "index.md").read_text("utf-8")
    append(docs / "index.md", "\nAbout {{ fact.nothing }}.\n")
    shop.build()
    assert len(shop.state.told) == 1
    assert shop.state.has_site
    assert contents(shop.folders.shown) == good
    (docs / "index.md").write_text(text, "utf-8")
    shop.build()
    assert shop.state.told == []
    assert contents(shop.folders.shown) == good


def test_a_python_error_is_a_sentence_with_its_place(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    config = copied(tmp_path)
    (tmp_path / "broken.py").write_text(
        "def on_page_markdown(markdown, **_):\n    return markdown + 1\n", "utf-8"
    )
    append(config, "hooks: [broken.py]\n")
    with live(config, tmp_path / "served") as shop:
        shop.build()
    sentences = [one.what for one in shop.state.told]
    assert sentences[-1] == (
        'Python stopped with TypeError: can only concatenate str (not "int") to str '
        "(expected code that runs)"
    )
    assert sentences[0].startswith("Error reading page '")
    assert "Traceback" in capsys.readouterr().err
    assert not any("Traceback" in one for one in sentences)


def test_settings_that_cannot_be_read_are_told_after_a_good_build(shop: Live) -> None:
    shop.build()
    append(Path(shop.config.config_file_path), "theme: {name: nothing-of-this-name}\n")
    shop.build()
    assert len(shop.state.told) == 1
    assert "nothing-of-this-name" in shop.state.told[0].what


def test_code_that_cannot_be_loaded_keeps_the_server_as_it_is() -> None:
    with pytest.raises(PluginError, match="cannot be loaded: .*No module named 'no_such_module'"):
        start_anew(["no_such_module"])


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("a (b) is wrong (expected c)", ("a (b) is wrong", "c", "")),
        ('x (expected one of: a, b; nearest: "b")', ("x", "one of: a, b", "b")),
        ("no bracket at all", ("no bracket at all", "", "")),
        (choosing("unknown", "word", []), ("unknown", "nothing: there is none", "")),
        (choosing("unknown", "ab", ["ac"]), ("unknown", '"ac"', "")),
    ],
)
def test_a_message_is_taken_apart(text: str, expected: tuple[str, str, str]) -> None:
    assert parts(Problem("file", 1, text)) == expected
