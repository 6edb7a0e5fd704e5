"""The sides of a comparison: revisions with their own calculators, built folders, the files now."""

from __future__ import annotations

import json
import shutil
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from build_tools.comparing.commands import between, compare
from build_tools.comparing.editions import NOW, side
from build_tools.comparing.record import NAME, edition_of_record, write
from build_tools.edition import TOOL, edition_of
from build_tools.set_up.failure import Failure
from tests.comparing.shops import ShopFolder, causes, told
from tests.pages.conftest import SECOND


@pytest.fixture
def kept(shop: ShopFolder) -> ShopFolder:
    """Return the shop in git, in one commit."""
    shop.commit()
    return shop


@pytest.fixture
def built_folder(before: dict[str, Any], tmp_path: Path) -> Path:
    """Return a folder with the record of a built edition."""
    folder = tmp_path / "edition-one"
    folder.mkdir()
    write(before, folder / NAME)
    return folder


def test_a_revision_and_the_files_now(kept: ShopFolder) -> None:
    kept.change("facts.yaml", "value: 500 mL", "value: 400 mL")
    found = between(side("HEAD", kept.root), NOW, kept.root)
    assert causes(found.numbers) == {("cup in docs_src/facts.yaml",)}
    commit = kept.git("rev-parse", "HEAD")[:8]
    assert found.old.startswith(f"revision {commit}, ")
    assert found.new == "the files as they are now"


def test_a_link_that_leads_out_of_a_revision_is_left_alone(kept: ShopFolder) -> None:
    (kept.root / "elsewhere").symlink_to(kept.root.parent)
    kept.commit()
    assert between(side("HEAD", kept.root), NOW, kept.root).is_empty


def test_a_changed_formula_in_the_folders_own_calculators(kept: ShopFolder) -> None:
    shutil.copytree(TOOL / "calculators", kept.root / "calculators")
    kept.commit()
    kept.git("tag", "before")
    water = kept.root / "calculators" / "water.py"
    text = water.read_text("utf-8")
    changed = text.replace(
        "given.iron * given.iron_allowance", "2 * given.iron * given.iron_allowance"
    )
    assert changed != text
    water.write_text(changed, "utf-8")
    kept.commit()
    found = between(side("before", kept.root), side("trunk", kept.root), kept.root)
    assert causes(found.numbers) == {("the formula of “hardness-setting” in calculators/water.py",)}
    assert {page for page, *_ in told(found.numbers)} >= {"work-out/hardness-setting.md"}


def test_two_built_folders(built_folder: Path, shop: ShopFolder, tmp_path: Path) -> None:
    shop.change("shop.yaml", "salt_bag_price: 149", "salt_bag_price: 159")
    other = tmp_path / "edition-two"
    other.mkdir()
    write(shop.record(), other / NAME)
    found = between(side(str(built_folder), shop.root), side(str(other), shop.root), shop.root)
    assert causes(found.numbers) == {("salt_bag_price in docs_src/shop.yaml",)}
    assert found.old == f"{built_folder}, November 25, 2026, revision 2b637838"


def test_a_built_folder_and_a_revision(built_folder: Path, kept: ShopFolder) -> None:
    found = between(side(str(built_folder), kept.root), side("HEAD", kept.root), kept.root)
    assert found.is_empty


def test_a_built_site_has_its_record(built: Callable[[Path], Path]) -> None:
    site = built(SECOND)
    record = json.loads((site / NAME).read_text("utf-8"))
    assert edition_of_record(record) == edition_of(SECOND, SECOND.parent / "docs_src")
    pages = {path.parent.relative_to(site).as_posix() for path in site.rglob("index.html")}
    of_record = {
        page.removesuffix(".md").removesuffix("index").rstrip("/") or "."
        for page in record["pages"]
    }
    assert {one for one in pages if not one.startswith("embed/")} == of_record
    listed = json.loads(next(site.glob("edition-????????????????.json")).read_text("utf-8"))
    assert NAME not in [address for address, *_ in listed]
    assert NAME not in (site / "service-worker.js").read_text("utf-8")


@pytest.mark.parametrize(
    ("name", "said"),
    [
        (
            "no-such-thing",
            "There is no revision and no folder “no-such-thing” (expected a revision of git, such "
            "as HEAD, or the folder of a built handbook).",
        ),
        (
            "docs_src",
            "The folder docs_src holds no edition-record.json: it is no built handbook, or one "
            "from before editions had a record. Build it anew, or name its revision.",
        ),
        (
            "tools",
            "“tools” is both a folder and a revision: write ./tools for the folder, or tools^0 for "
            "the revision.",
        ),
        (
            "empty",
            "The revision {empty} has no mkdocs.yml in this folder: it is older than this "
            "handbook.",
        ),
    ],
)
def test_what_cannot_be_compared_is_told_in_a_sentence(
    kept: ShopFolder, monkeypatch: pytest.MonkeyPatch, name: str, said: str
) -> None:
    monkeypatch.chdir(kept.root)
    (kept.root / "tools").mkdir()
    kept.git("branch", "tools")
    kept.git("checkout", "--quiet", "--orphan", "empty")
    kept.git("rm", "-r", "--cached", "--quiet", ".")
    kept.git("commit", "--quiet", "--allow-empty", "--message", "Nothing")
    with pytest.raises(Failure) as failure:
        between(side(name, kept.root), NOW, kept.root)
    assert str(failure.value) == said.format(empty=kept.git("rev-parse", "empty")[:8])


def test_a_name_that_is_both_can_be_said(
    kept: ShopFolder, built_folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(built_folder.parent)
    kept.git("branch", built_folder.name)
    assert side(f"./{built_folder.name}", kept.root).folder == Path(built_folder.name)
    assert side(f"{built_folder.name}^0", kept.root).commit == kept.git("rev-parse", "HEAD")


def test_sources_that_cannot_be_read_are_named(kept: ShopFolder) -> None:
    kept.change("shop.yaml", "salt_bag_price: 149", "salt_bag_price: 149 kr")
    with pytest.raises(Failure) as failure:
        between(side("HEAD", kept.root), NOW, kept.root)
    said = str(failure.value)
    assert said.startswith("The numbers of the files as they are now cannot be told. ")
    assert 'docs_src/shop.yaml:19: "salt_bag_price" is "149 kr" (expected a number)' in said


def test_a_revision_that_is_too_old_is_told(kept: ShopFolder) -> None:
    (kept.root / "calculators").mkdir()
    (kept.root / "calculators" / "__init__.py").write_text("CALCULATORS = {}\n", "utf-8")
    kept.commit()
    with pytest.raises(Failure) as failure:
        between(side("HEAD", kept.root), NOW, kept.root)
    said = str(failure.value)
    assert said.startswith("The numbers of revision ")
    assert " cannot be told. It is too old for this tool, or too new (" in said
    assert "Traceback" not in said


def test_a_record_of_another_format_is_refused(built_folder: Path, shop: ShopFolder) -> None:
    path = built_folder / NAME
    one = side(str(built_folder), shop.root)
    path.write_text(path.read_text("utf-8").replace('"format":1', '"format":2'), "utf-8")
    with pytest.raises(Failure, match=r"is a record of another format \(expected 1\)"):
        between(one, one, shop.root)
    path.write_text("no json", "utf-8")
    with pytest.raises(Failure, match="is no record of an edition: build that edition anew"):
        between(one, one, shop.root)


def test_both_formats(
    kept: ShopFolder, built_folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    kept.change("facts.yaml", "value: 500 mL", "value: 400 mL")
    compare(kept.root, str(built_folder), None, "text")
    text = capsys.readouterr().out
    assert "cup in docs_src/facts.yaml: 500 → 400 mL: 4 numbers on 4 pages" in text
    assert "    Steps, step 4\n      “Time the rinse with a …”: 500 → 400 mL\n" in text
    compare(kept.root, str(built_folder), None, "json")
    data = json.loads(capsys.readouterr().out)
    reason = {
        "kind": "fact",
        "name": "cup",
        "file": "docs_src/facts.yaml",
        "old": "500 mL",
        "new": "400 mL",
    }
    assert (data["format"], data["texts"], data["pages"]) == (1, [], [])
    assert [(one["reasons"], one["numbers"]) for one in data["causes"]] == [([reason], 4)]
    step = next(one for one in data["numbers"] if one["page"] == "procedures/set-the-cabinet")
    assert step == {
        "page": "procedures/set-the-cabinet",
        "place": ["Steps", "step 4"],
        "anchor": "step-4",
        "kind": "step",
        "old": {"number": "500", "unit": "mL"},
        "new": {"number": "400", "unit": "mL"},
        "old_text": "Time the rinse with a 500 mL cup.",
        "new_text": "Time the rinse with a 400 mL cup.",
        "reasons": [reason],
    }
