"""`--shop FOLDER`: commands work on that shop, wherever it lies."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from build_tools.authoring.watching import saves
from build_tools.commands import ROOT, run
from build_tools.set_up.start import behind_the_shop
from build_tools.shops.place import LIBRARY, place_of


@pytest.fixture(scope="module")
def shop(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A metric shop that no test changes."""
    folder = tmp_path_factory.mktemp("shops") / "heather"
    named = ("--name", "Heather Water", "--town", "Vik", "--units", "metric", "--defaults")
    own = ("--copies", "vik-softener=time-clock-softener", "--iron-allowance", "80 mg/L per mg/L")
    assert run(["new", "shop", str(folder), *named, *own]) == 0
    return folder


def asked_before_and_after(shop: Path, *words: str) -> tuple[list[str], list[str]]:
    """Return the words of a command with the option before its name, and at its end."""
    return ["--shop", str(shop), *words], [*words, f"--shop={shop}"]


def test_the_option_stands_before_the_command_or_after_it(
    shop: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    for words in asked_before_and_after(shop, "work-out", "hardness-setting", "--json"):
        capsys.readouterr()
        assert run([*words, "hardness=300 mg/L", "iron=0.5 mg/L"]) == 0
        found = json.loads(capsys.readouterr().out)
        assert found["inputs"]["iron_allowance"]["shown"] == "80\u00a0mg/L per mg/L"
        assert found["values"]["compensated"]["shown"] == "340\u00a0mg/L"


def test_a_unit_of_the_shop_fills_a_calculator(
    shop: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(["work-out", "brine-refill", "--unit", "vik-softener", "--shop", str(shop)]) == 0
    assert "min" in capsys.readouterr().out
    assert (
        run(["work-out", "brine-refill", "--unit", "twin-tank-softener", "--shop", str(shop)]) == 1
    )
    assert 'There is no unit of equipment "twin-tank-softener"' in capsys.readouterr().err


def test_a_new_source_is_written_into_the_shop(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    shop = tmp_path / "alder"
    assert run(["new", "shop", str(shop), "--name", "A", "--town", "B", "--defaults"]) == 0
    capsys.readouterr()
    assert run(["new", "procedure", "Weigh the salt", "--shop", str(shop)]) == 0
    written = shop / "docs_src" / "procedures" / "weigh-the-salt.yaml"
    assert capsys.readouterr().out.startswith(
        "Written: docs_src/procedures/weigh-the-salt.yaml:1\n"
    )
    assert str(ROOT) not in written.read_text("utf-8")
    assert run(["new", "fact", "Weight of a bucket of salt", "--shop", str(shop)]) == 0
    assert "weight_of_a_bucket_of_salt:" in (shop / "docs_src" / "facts.yaml").read_text("utf-8")
    assert not (LIBRARY / "procedures" / "weigh-the-salt.yaml").exists()
    capsys.readouterr()
    assert run(["check", "--shop", str(shop)]) == 1
    problems = capsys.readouterr().err.splitlines()[:-1]
    assert all(
        one.startswith(("docs_src/procedures/weigh", "docs_src/facts.yaml:")) for one in problems
    )


def test_a_new_source_does_not_hide_a_shipped_one(
    shop: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(["new", "procedure", "Arrival check", "--shop", str(shop)]) == 1
    told = "/docs_src/procedures/arrival-check.yaml:1: the file is there already, and nothing was"
    assert told in capsys.readouterr().err
    assert run(["new", "fact", "Scald", "--name", "scald_time", "--shop", str(shop)]) == 1
    assert 'the fact "scald_time" is there already' in capsys.readouterr().err
    page = ("--page", "learn/what-hardness-is", "--calculate", "hardness-setting")
    assert run(["new", "example", "A setting", *page, "--shop", str(shop)]) == 1
    told = capsys.readouterr().err
    assert "/docs_src/learn/what-hardness-is.md:1: the page is a shipped one" in told
    assert "copy the file to docs_src/learn/what-hardness-is.md, and name" in told


def test_a_folder_without_a_shop_is_one_sentence(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    for command in ("check", "build", "serve"):
        assert run([command, "--shop", str(tmp_path)]) == 1
        assert capsys.readouterr().err == (
            f"There is no shop in {tmp_path}: it has no mkdocs.yml (the command new shop writes "
            "one).\n"
        )


def test_settings_that_cannot_be_used_are_one_sentence(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "mkdocs.yml").write_text("INHERIT: nowhere.yml\n")
    assert run(["check", "--shop", str(tmp_path)]) == 1
    error = capsys.readouterr().err
    assert error.startswith(f"{tmp_path / 'mkdocs.yml'} cannot be used: ")
    assert error.count("\n") == 1


def test_a_class_pack_is_of_the_shops_exercises(
    shop: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    words = ["class-pack", "--seed", "7", "--output", str(tmp_path / "pack"), "--no-pdf"]
    assert run([*words, "--exercises", "load-of-a-household", "--shop", str(shop)]) == 0
    sheets = "".join(one.read_text("utf-8") for one in (tmp_path / "pack").glob("*.html"))
    assert "mg/L" in sheets
    assert "gpg" not in sheets


def test_both_folders_are_watched(shop: Path) -> None:
    place = place_of(shop)
    assert place.watched == (shop / "docs_src", LIBRARY)
    assert place_of(None).watched == (LIBRARY,)


def test_a_change_in_each_watched_folder_is_told(tmp_path: Path) -> None:
    folders = [tmp_path / "one", tmp_path / "two"]
    for folder in folders:
        folder.mkdir()
    watched = saves(*folders)
    next(watched)
    for folder in folders:
        (folder / "new.yaml").write_text("title: A\n", "utf-8")
        next(watched)
    watched.close()


@pytest.mark.parametrize(
    ("words", "rest"),
    [
        (["check"], ["check"]),
        (["--shop", "x", "check", "--watch"], ["check", "--watch"]),
        (["--shop=x", "check"], ["check"]),
        (["--shop", "x"], []),
        (["--shop"], []),
        (["check", "--shop", "x"], ["check", "--shop", "x"]),
    ],
)
def test_the_set_up_sees_the_command_behind_the_option(words: list[str], rest: list[str]) -> None:
    assert behind_the_shop(words) == rest
