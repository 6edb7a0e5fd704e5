"""The command `new shop`: a folder that passes its check as it is."""

from __future__ import annotations

import io
import re
from pathlib import Path

import pytest

from build_tools.commands import ROOT, run
from build_tools.shops.questions import QUESTIONS, BadAnswer, carried, copies
from build_tools.shops.retold import load

US = ("--name", "Alder Softening", "--town", "Millbrook", "--defaults")


def made(folder: Path, *options: str) -> Path:
    """Write a shop from options and return its folder."""
    assert run(["new", "shop", str(folder), *options]) == 0
    return folder


def test_from_options_it_passes_its_check_at_once(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    units = "immediate-meter-softener,apartment-softener"
    shop = made(tmp_path / "alder", *US, "--equipment", units, "--salt-bag-price", "1,500")
    assert capsys.readouterr().out == (
        f"Written: {shop}\n"
        f"Check it:  python3 -m build_tools check --shop {shop}\n"
        f"Look at it:  python3 -m build_tools serve --shop {shop}\n"
    )
    assert run(["check", "--shop", str(shop)]) == 0
    assert capsys.readouterr().out == "No problems found.\n"
    content = load(shop / "docs_src", shop, ROOT / "docs_src").shop.content
    assert (content.name, content.town, content.salt_bag_price) == (
        "Alder Softening",
        "Millbrook",
        1500,
    )
    assert content.equipment == ["immediate-meter-softener", "apartment-softener"]


ANSWERS = [
    ("The shop's name", "Norr Vatten"),
    ("The town", "Vik"),
    ("A sentence", ""),
    ("The units", "metrish"),
    ("The units", "metric"),
    ("People", "none"),
    ("People", "2"),
    ("Hardness of", "300 frogs"),
    ("Hardness of", "320"),
    ("Dissolved iron", "0.2 mg/L"),
    ("Hardness to allow for iron", "5 gpg per mg/L"),
    ("Hardness to allow for manganese", ""),
    ("Water that", "130 L/day"),
    ("The share", "40"),
    ("What one drop", "2 °dH"),
    ("The smallest step", "0"),
    ("The smallest step", "0.2 mg/L"),
    ("The sign", "kr"),
    ("What a bag of salt", "20 kg"),
    ("What a bag costs", "140 kr"),
    ("What a bag costs", "140"),
    ("The volume", "1 m3"),
    ("What so much", "30"),
    ("What sewer", "0"),
    ("Shipped units", "none"),
    ("Units of its own", "none"),
    ("Units of its own", "vik-softener=twin-tank-softner"),
    ("Units of its own", "vik-softener=twin-tank-softener small-one=apartment-softener"),
]
REFUSED = [
    "“metrish” is no system of units. Write us or metric.",
    "“none” is not a number of people. Write one such as 3.",
    "“frogs” is no unit for a hardness. Use gpg, mg/L, °dH, °fH, °Clark, mmol/L, meq/L.",
    "A step is above zero.",
    "A price is a number alone. Leave out the sign of the currency.",
    "A shop carries at least one unit. Name one to begin from.",
    "There is no shipped unit “twin-tank-softner”: apartment-softener, delayed-meter-softener, "
    "farmhouse-softener, immediate-meter-softener, time-clock-softener, twin-tank-softener. The "
    "nearest is “twin-tank-softener”.",
]


def test_asked_on_the_terminal_a_bad_answer_is_asked_again(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    shop = tmp_path / "norr"
    typed = "".join(f"{text}\n" for _, text in ANSWERS).encode()
    monkeypatch.setattr("sys.stdin", io.TextIOWrapper(io.BytesIO(typed)))
    assert run(["new", "shop", str(shop)]) == 0
    told = capsys.readouterr().out
    assert re.findall(r"Error: (.*)", told) == REFUSED
    place = 0
    for words, _ in ANSWERS:
        assert words in told[place:], words
        place = told.index(words, place) + 1
    assert run(["check", "--shop", str(shop)]) == 0
    content = load(shop / "docs_src", shop, ROOT / "docs_src").shop.content
    assert content.typical_home.hardness.text == "320 mg/L"
    assert content.hot_share.text == "40 %"
    assert content.equipment == ["vik-softener", "small-one"]
    assert content.region == "Vik and the homes around it."


def test_answers_that_do_not_go_together_are_told_at_once(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    shop = tmp_path / "very hard"
    assert run(["new", "shop", str(shop), *US, "--hardness", "100 gpg"]) == 1
    told = capsys.readouterr()
    assert f"check --shop '{shop}'\n" in told.out
    assert "docs_src/learn/salt-and-water-counted.md:" in told.err
    assert told.err.endswith(
        "The shop is written, but its answers leave the problems above. Change them in "
        f"{shop}/docs_src/shop.yaml, then run the check.\n"
    )


def test_a_shop_is_never_begun_among_the_shipped_sources(
    capsys: pytest.CaptureFixture[str],
) -> None:
    inside = ROOT / "docs_src" / "learn" / "our-shop"
    assert run(["new", "shop", str(inside), *US]) == 1
    assert "inside the shipped handbook's sources" in capsys.readouterr().err
    assert not inside.exists()


def test_nothing_is_overwritten(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "letter.txt").write_text("dear")
    assert run(["new", "shop", str(tmp_path), *US]) == 1
    assert capsys.readouterr().err == (
        f"{tmp_path} holds something already: name a new folder or an empty one.\n"
    )
    assert [*tmp_path.iterdir()] == [tmp_path / "letter.txt"]


@pytest.mark.parametrize(
    ("options", "told"),
    [
        (
            (*US, "--units", "imperial"),
            "--units: “imperial” is no system of units. Write us or metric.",
        ),
        ((*US, "--people", "31"), "--people: 31 is above the limit of 30."),
        ((*US, "--hardness", "0"), "--hardness: 0 gpg is below the limit of 0.5 gpg."),
        ((*US, "--water-price", "2000000"), "--water-price: 2,000,000 is above the limit of "),
        (
            ("--name", "Alder\x1b[31m", "--town", "Vik", "--defaults"),
            "--name: The answer has a character that cannot be seen. Type it once more.",
        ),
        (
            (*US, "--water-per-person", "5000 gal/day"),
            "--water-per-person: ",
        ),
        (
            (*US, "--equipment", "kitchen-cabinet"),
            "--equipment: There is no shipped unit “kitchen-cabinet”: ",
        ),
        (
            (*US, "--copies", "Big Unit=twin-tank-softener"),
            "--copies: “Big” names no copy. Write such as my-softener=apartment-softener.",
        ),
        (("--town", "Vik", "--defaults"), "--name is missing, and it has no default."),
    ],
)
def test_a_bad_option_is_one_sentence_and_nothing_is_written(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], options: tuple[str, ...], told: str
) -> None:
    assert run(["new", "shop", str(tmp_path / "shop"), *options]) == 1
    error = capsys.readouterr().err
    assert error.startswith(told)
    assert error.count("\n") == 1
    assert not (tmp_path / "shop").exists()


def test_no_path_of_this_machine_stands_in_it(tmp_path: Path) -> None:
    shop = made(tmp_path / "alder", *US)
    for file in (one for one in shop.rglob("*") if one.is_file()):
        text = file.read_text("utf-8")
        assert str(ROOT) not in text
        assert str(tmp_path) not in text
    moved = shop.rename(tmp_path / "elsewhere")
    assert run(["check", "--shop", str(moved)]) == 0


def test_words_with_signs_of_yaml_are_kept(tmp_path: Path) -> None:
    name = 'Yes: #1 "Soft" & Söhne'
    shop = made(tmp_path / "odd", "--name", name, "--town", "null", "--defaults")
    content = load(shop / "docs_src", shop, ROOT / "docs_src").shop.content
    assert (content.name, content.town) == (name, "null")


def test_every_default_is_a_good_answer() -> None:
    for units in ("us", "metric"):
        answers = {"name": "A", "town": "B", "units": units}
        for one in QUESTIONS[2:]:
            if one.name != "units":
                answers[one.name] = one.read(one.default_for(answers), answers)


@pytest.mark.parametrize("text", ["a", "a=", "A-b=x", "a_b=x", "-a=x", "x=x"])
def test_a_copy_needs_a_name_of_its_own(text: str) -> None:
    with pytest.raises(BadAnswer):
        copies(text, ["x"])


def test_names_are_parted_by_commas_or_spaces() -> None:
    assert carried("a,b  a, c", ["a", "b", "c"]) == ["a", "b", "c"]
    assert copies("a-1=x, b=x", ["x"]) == {"a-1": "x", "b": "x"}
