"""What `new` writes explains itself, loads, and is led on by the check."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from build_tools.authoring.new import KINDS, Wanted, make
from build_tools.authoring.template import MAY_BE_LEFT_OUT, lines, scalar
from build_tools.checks import find_problems
from build_tools.content.fields import keys
from build_tools.content.handbook import load_handbook
from build_tools.content.loading import LISTS, SECTIONS
from build_tools.content.page_models import LessonFront, WorkedExample
from build_tools.content.validation import validate
from build_tools.content.yaml_file import read_yaml
from build_tools.set_up.failure import Failure
from tests.content.small_shop import FILES, write

TITLE = "Weigh: the salt’s bag"
MADE = [kind for kind in KINDS if kind != "exercise" or "practice" in SECTIONS]
SHAPES = [*SECTIONS.values(), *(shape for shape, _ in LISTS.values()), LessonFront, WorkedExample]
STILL = re.compile(
    r'still an example \(expected .*; then take "(# example|<!-- example -->)" away\)$'
)
#: Kind -> what the check says besides, of a new source that is filled in.
LEFT = {
    "procedure": [
        "docs_src/procedures/weigh-the-salts-bag.yaml:1: no other page leads to this one (expected "
        'a link, a "go_to" or a list on another page that names it)'
    ],
    "fault": [
        "docs_src/faults/weigh-the-salts-bag.yaml:1: no other page leads to this one (expected a "
        'link, a "go_to" or a list on another page that names it)',
        "docs_src/faults/weigh-the-salts-bag.yaml:34: no check can tell this fault (expected a "
        'change under "simulation", or the chance of an abnormal result of some check)',
    ],
    "check": [
        "docs_src/checks/weigh-the-salts-bag.yaml:1: no fault expects an abnormal result of this "
        'check (expected its chance under "likelihoods" of a fault)'
    ],
    "exercise": [
        'docs_src/practice/weigh-the-salts-bag.yaml:9: there is no skill "name-of-one" (there are '
        "none yet)"
    ],
    "fact": [
        'docs_src/facts.yaml:17: no text uses the fact "weigh_the_salts_bag" (expected '
        "{{ fact.weigh_the_salts_bag }} somewhere, or no such fact)"
    ],
}


def _make(folder: Path, kind: str, **more: str) -> tuple[Path, str]:
    docs = write(folder, FILES)
    wanted = Wanted(kind, more.pop("title", TITLE), page=more.pop("page", "learn/hardness"), **more)
    written = make(load_handbook(docs, folder), wanted)
    return docs, written.file


@pytest.mark.parametrize("kind", MADE)
def test_each_loads_and_the_check_names_what_is_left(tmp_path: Path, kind: str) -> None:
    docs, file = _make(tmp_path, kind)
    text = (tmp_path / file).read_text("utf-8")
    assert not load_handbook(docs, tmp_path).problems
    told = [str(one) for one in find_problems(docs, tmp_path)]
    still = [one for one in told if STILL.search(one)]
    marked = re.findall(r"^(?!#)[^#\n]*[^\s#][^#\n]*# example$|^<!-- example -->$", text, re.M)
    assert len(still) == len(marked) > 0
    assert [one for one in told if one not in still] == LEFT.get(kind, [])
    filled = re.sub(r"\s*(# example|<!-- example -->)$", "", text, flags=re.M)
    (tmp_path / file).write_text(filled, "utf-8")
    assert len(find_problems(docs, tmp_path)) == len(LEFT.get(kind, []))


@pytest.mark.parametrize("kind", MADE)
def test_nothing_is_overwritten(tmp_path: Path, kind: str) -> None:
    docs, file = _make(tmp_path, kind)
    before = (tmp_path / file).read_text("utf-8")
    with pytest.raises(Failure, match="is there already, and nothing was written"):
        make(load_handbook(docs, tmp_path), Wanted(kind, TITLE, page="learn/hardness"))
    assert (tmp_path / file).read_text("utf-8") == before


@pytest.mark.parametrize("shape", SHAPES)
def test_every_key_is_told_the_needed_first(shape: type) -> None:
    text = lines(shape, {}, lambda group: None)
    free = text.index(MAY_BE_LEFT_OUT) if MAY_BE_LEFT_OUT in text else len(text)
    for key, field in keys(shape).items():
        place = next(i for i, line in enumerate(text) if re.match(rf"#?{key}:", line))
        if field.is_required():
            assert place < free
        told = " ".join(line.removeprefix("# ") for line in text[:place] if line.startswith("# "))
        assert field.description in told


@pytest.mark.parametrize("shape", SHAPES)
def test_a_key_that_is_taken_in_loads(shape: type) -> None:
    """All of them at once: only what several keys say together may be told."""
    text = "\n".join(lines(shape, {}, lambda group: None))
    read = read_yaml(re.sub(r"^#(?=[^# ]|  )", "", text, flags=re.M), "new.yaml")
    assert set(read.data) == set(keys(shape))
    validate(shape, read, read.data)
    told = [one.text for one in read.problems]
    together = ("needs", "must be below", "a time clock has no meter", "does not belong to")
    assert [one for one in told if not any(part in one for part in together)] == []


def test_a_new_file_names_its_schema(tmp_path: Path) -> None:
    _, file = _make(tmp_path, "fault")
    first = (tmp_path / file).read_text("utf-8").split("\n")[0]
    assert first == "# yaml-language-server: $schema=../../docs/schemas/faults.schema.json"


def test_an_entry_is_added_and_the_rest_stays(tmp_path: Path) -> None:
    _make(tmp_path, "fact", name="bag_weight")
    text = (tmp_path / "docs_src/facts.yaml").read_text("utf-8")
    assert text.startswith(FILES["facts.yaml"])
    assert "\nbag_weight:\n  # what the fact is, in words\n  is: " in text


@pytest.mark.parametrize(
    ("kind", "more", "said"),
    [
        ("procedure", {"title": "  "}, "The title is empty (expected a few words)."),
        (
            "procedure", {"title": "?!"},
            '"?!" gives no name (expected a title that begins with a letter, or --name with '
            "letters from a to z).",
        ),
        (
            "fact", {"title": "2 buckets"},
            '"2 buckets" gives no name (expected a title that begins with a letter, or --name with '
            "letters from a to z).",
        ),
        (
            "procedure", {"title": "salt " * 30},
            "The title gives a name of 149 characters (expected at most 80: add --name with a "
            "shorter one).",
        ),
        (
            "example", {"page": "learn/hardnes"},
            'There is no page "learn/hardnes": add --page with its name (expected one of: index, '
            'learn/hardness; nearest: "learn/hardness").',
        ),
        (
            "example", {"page": ""},
            "An example stands in a page: add --page with its name (expected one of: index, "
            "learn/hardness).",
        ),
        (
            "table", {"calculate": "brine-refil"},
            'There is no calculator "brine-refil" (expected one of: brine-refill, brine-draw, '
            'brine-strength, brine-level, …; nearest: "brine-refill").',
        ),
        (
            "fault", {"name": "no-salt"},
            "docs_src/faults/no-salt.yaml:1: the file is there already, and nothing was written "
            "(expected another title, or --name with another name).",
        ),
        (
            "fact", {"name": "bucket"},
            'docs_src/facts.yaml:1: the fact "bucket" is there already, and nothing was written '
            "(expected another title, or --name with another name).",
        ),
    ],
)
def test_what_cannot_be_made_is_told(
    tmp_path: Path, kind: str, more: dict[str, str], said: str
) -> None:
    with pytest.raises(Failure) as failure:
        _make(tmp_path, kind, **more)
    assert str(failure.value) == said


@pytest.mark.parametrize(
    "text",
    ["plain", "a: b", "# no", "yes", "12:30", "3", "null", "", "“said”", '"so"', "- a", "{{ x }}"],
)
def test_a_value_is_read_as_it_was(text: str) -> None:
    assert read_yaml(f"key: {scalar(text)}", "").data == {"key": text}
    assert read_yaml(f"key: {scalar([text, 'a, b'])}", "").data == {"key": [text, "a, b"]}
