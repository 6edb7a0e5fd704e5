"""One change of the small shop at a time: what is told, and why."""

from __future__ import annotations

from typing import Any

from build_tools.comparing.as_text import as_text
from tests.comparing.shops import ShopFolder, causes, compared, told

SHOP, FACTS = "docs_src/shop.yaml", "docs_src/facts.yaml"


def test_nothing_changed(shop: ShopFolder, before: dict[str, Any]) -> None:
    found = compared(before, shop.record())
    assert found.is_empty
    assert as_text(found).endswith("Nothing that readers see is different.")


def test_a_value_of_the_shop(shop: ShopFolder, before: dict[str, Any]) -> None:
    shop.change("shop.yaml", "iron_allowance: 68 mg/L", "iron_allowance: 77 mg/L")
    found = compared(before, shop.record())
    assert causes(found.numbers) == {(f"iron_allowance in {SHOP}",)}
    assert found.texts == found.pages == []
    changed = told(found.numbers)
    assert {
        ("reference/shop.md", "68", "77"),  # the shop's own page
        ("work-out/hardness-setting.md", "68", "77"),  # a form's default
        ("work-out/hardness-setting.md", "68", "77"),  # its answer
    } <= changed
    assert {page for page, *_ in changed} <= {
        "reference/shop.md",
        "work-out/hardness-setting.md",
        "equipment/kitchen-cabinet.md",
    }
    (reasons, pages) = found.by_cause()[0]
    assert (reasons[0].old, reasons[0].new) == ("68 mg/L per mg/L", "77 mg/L per mg/L")
    text = as_text(found)
    assert f"iron_allowance in {SHOP}: 68 → 77 mg/L per mg/L: " in text
    assert "      Allowance for iron (mg/L per mg/L): 68 → 77 mg/L per mg/L\n" in text
    assert "    form\n" in text
    assert sum(map(len, pages.values())) == len(found.numbers)


def test_the_typical_home_in_a_text_and_a_sheet(shop: ShopFolder, before: dict[str, Any]) -> None:
    shop.change("shop.yaml", "hardness: 280 mg/L", "hardness: 340 mg/L")
    found = compared(before, shop.record())
    assert causes(found.numbers) == {(f"typical_home.hardness in {SHOP}",)}
    changed = told(found.numbers)
    assert ("learn/the-spring.md", "280", "340") in changed
    assert ("equipment/kitchen-cabinet.md", "290", "350") in changed
    assert ("procedures/set-the-cabinet.md", "290", "350") in changed  # an expected reading


def test_a_price_has_its_sign_and_its_cause(shop: ShopFolder, before: dict[str, Any]) -> None:
    shop.change("shop.yaml", "salt_bag_price: 149", "salt_bag_price: 159")
    found = compared(before, shop.record())
    assert causes(found.numbers) == {(f"salt_bag_price in {SHOP}",)}
    assert ("reference/shop.md", "149", "159") in told(found.numbers)


def test_a_fact_and_both_ends_of_a_range(shop: ShopFolder, before: dict[str, Any]) -> None:
    shop.change("facts.yaml", "low: 10 min", "low: 9 min")
    found = compared(before, shop.record())
    assert causes(found.numbers) == {(f"calm_water in {FACTS}",)}
    assert told(found.numbers) == {
        ("procedures/set-the-cabinet.md", "10", "9"),
        ("checks/bowl-watched.md", "10", "9"),
        ("reference/numbers.md", "10", "9"),
    }
    (reason,) = found.numbers[0].reasons
    assert (reason.old, reason.new) == ("10 min to 15 min", "9 min to 15 min")


def test_a_figure_of_a_unit(shop: ShopFolder, before: dict[str, Any]) -> None:
    shop.change("equipment/kitchen-cabinet.yaml", "refill_flow: 0.6", "refill_flow: 0.4")
    found = compared(before, shop.record())
    assert causes(found.numbers) == {("refill_flow in docs_src/equipment/kitchen-cabinet.yaml",)}
    changed = told(found.numbers)
    assert ("equipment/kitchen-cabinet.md", "0.6", "0.4") in changed
    assert any(page == "procedures/set-the-cabinet.md" for page, *_ in changed)


def test_a_choice_without_a_number_is_a_cause_too(shop: ShopFolder, before: dict[str, Any]) -> None:
    shop.change("equipment/kitchen-cabinet.yaml", "control: immediate meter", "control: twin tank")
    found = compared(before, shop.record())
    file = "docs_src/equipment/kitchen-cabinet.yaml"
    numbers = [one for one in found.numbers if one.change.old and one.change.new]
    assert causes(numbers) == {(f"control in {file}",)}
    assert ("equipment/kitchen-cabinet.md", "1,300", "1,350") in told(numbers)


def test_what_a_worked_example_is_given(shop: ShopFolder, before: dict[str, Any]) -> None:
    shop.change("learn/the-spring.md", "  capacity: 400 g", "  capacity: 300 g")
    found = compared(before, shop.record())
    page = "learn/the-spring.md"
    assert causes(found.numbers) == {
        (f"capacity given to the worked example “harbor-flat-interval” in docs_src/{page}",)
    }
    changed = told(found.numbers)
    assert (page, "400", "300") in changed  # the form's default
    assert (page, "1,300", "1,000") in changed  # its answer


def test_what_a_picture_is_given(shop: ShopFolder, before: dict[str, Any]) -> None:
    shop.change("learn/the-spring.md", "given: {salt: 2 kg", "given: {salt: 1.5 kg")
    found = compared(before, shop.record())
    page = "learn/the-spring.md"
    assert causes(found.numbers) == {
        (f"salt given to the picture “capacity-by-salt” in docs_src/{page}",)
    }
    assert {one.change.block.kind for one in found.numbers} == {"picture"}


def test_two_causes_of_one_number_stand_together(shop: ShopFolder, before: dict[str, Any]) -> None:
    shop.change("shop.yaml", "iron_allowance: 68 mg/L", "iron_allowance: 77 mg/L")
    shop.change("shop.yaml", "hardness: 280 mg/L", "hardness: 340 mg/L")
    shop.change("facts.yaml", "value: 500 mL", "value: 400 mL")
    found = compared(before, shop.record())
    both = (f"iron_allowance in {SHOP}", f"typical_home.hardness in {SHOP}")
    assert causes(found.numbers) == {both, both[:1], both[1:], (f"cup in {FACTS}",)}
    of_cup = [one for one in found.numbers if one.reasons[0].words == "cup"]
    assert {page for page, *_ in told(of_cup)} == {
        "procedures/set-the-cabinet.md",
        "checks/rinse-in-a-cup.md",
        "checks/index.md",
        "reference/numbers.md",
    }
    assert f"iron_allowance in {SHOP}: 68 → 77 mg/L per mg/L; and typical_home.hardness" in as_text(
        found
    )


def test_a_reworded_step(shop: ShopFolder, before: dict[str, Any]) -> None:
    shop.change("procedures/set-the-cabinet.yaml", "Enter the hardness.", "Type the hardness in.")
    found = compared(before, shop.record())
    assert found.numbers == found.pages == []
    assert causes(found.texts) == {("the text in docs_src/procedures/set-the-cabinet.yaml",)}
    step = next(one.change for one in found.texts if one.page == "procedures/set-the-cabinet.md")
    assert (step.block.kind, step.block.place, step.what) == (
        "step",
        ("Steps", "step 1"),
        "reworded",
    )
    assert step.parts == (
        ("removed", "Enter"),
        ("added", "Type"),
        ("same", " the hardness"),
        ("added", " in"),
        ("same", "."),
    )
    assert "Steps, step 1, step reworded: [-Enter-]{+Type+} the hardness{+ in+}." in as_text(found)


def test_a_title_that_stands_at_the_head_of_a_file(
    shop: ShopFolder, before: dict[str, Any]
) -> None:
    shop.change("equipment/index.md", "title: Equipment", "title: What we service")
    found = compared(before, shop.record())
    heading = next(one for one in found.texts if one.page == "equipment/index.md")
    assert (heading.title, heading.change.block.kind) == ("What we service", "heading")


def test_what_nothing_explains_may_be_the_text_elsewhere_or_the_tool(
    shop: ShopFolder, before: dict[str, Any]
) -> None:
    shop.change("procedures/set-the-cabinet.yaml", "Enter the hardness.", "Type the hardness in.")
    new = shop.record() | {"tool": "another"}
    new["pages"]["checks/index.md"]["text"] += "\n\nIt takes 7 min.\n"
    found = compared(before, new)
    assert causes(found.numbers) == {
        (
            "the text in docs_src/procedures/set-the-cabinet.yaml",
            "how pages are written in build_tools",
        )
    }


def test_a_number_typed_in_a_text(shop: ShopFolder, before: dict[str, Any]) -> None:
    shop.change("learn/the-spring.md", "reads 16 °dH, which", "reads 17 °dH, which")
    found = compared(before, shop.record())
    assert told(found.numbers) == {("learn/the-spring.md", "16", "17")}
    assert causes(found.numbers) == {("the text in docs_src/learn/the-spring.md",)}
    assert found.texts == []


def test_a_step_that_was_added_with_a_fact(shop: ShopFolder, before: dict[str, Any]) -> None:
    shop.change(
        "procedures/set-the-cabinet.yaml",
        "  - do: Wait {{ fact.calm_water }}.\n",
        "  - do: Wait {{ fact.calm_water }}.\n  - do: Let {{ fact.cup }} of brine run.\n",
    )
    found = compared(before, shop.record())
    added = [one for one in found.texts if one.change.what == "added"]
    assert [(one.page, one.change.block.text) for one in added] == [
        ("procedures/set-the-cabinet.md", "Let 500 mL of brine run.")
    ]
    assert told(found.numbers) == {("procedures/set-the-cabinet.md", None, "500")}
    file = "the text in docs_src/procedures/set-the-cabinet.yaml"
    assert causes(found.numbers) == causes(found.texts) == {(file,)}


def test_a_step_that_was_removed(shop: ShopFolder, before: dict[str, Any]) -> None:
    shop.change("procedures/set-the-cabinet.yaml", "  - do: Wait {{ fact.calm_water }}.\n", "")
    found = compared(before, shop.record())
    removed = [one for one in found.texts if one.page == "procedures/set-the-cabinet.md"]
    assert [(one.change.what, one.change.block.text) for one in removed] == [
        ("removed", "Wait 10 to 15 min.")
    ]
    assert told(found.numbers) == {
        ("procedures/set-the-cabinet.md", "10", None),
        ("procedures/set-the-cabinet.md", "15", None),
    }


def test_pages_that_came_and_went(shop: ShopFolder, before: dict[str, Any]) -> None:
    shop.path("checks/rinse-in-a-cup.yaml").rename(shop.path("checks/rinse-in-a-glass.yaml"))
    for name in ("faults/crushed-hose.yaml", "faults/dripping-cistern.yaml"):
        text = shop.path(name).read_text("utf-8").replace("rinse-in-a-cup", "rinse-in-a-glass")
        shop.path(name).write_text(text, "utf-8")
    shop.path("learn/index.md").with_name("notes.md").write_text(
        "---\ntitle: Notes\norder: 2\nminutes: 5\naim: Learn 3 things.\n"
        "can_now: [One thing.]\nquestions: []\n---\n\nNobody read 7 of these 12 words before.\n",
        "utf-8",
    )
    found = compared(before, shop.record())
    assert {(one.what, one.old, one.new) for one in found.pages} == {
        ("renamed", "checks/rinse-in-a-cup.md", "checks/rinse-in-a-glass.md"),
        ("added", None, "learn/notes.md"),
    }
    back = compared(shop.record(), before)
    assert ("removed", "learn/notes.md", None) in {
        (one.what, one.old, one.new) for one in back.pages
    }
    text = as_text(found)
    assert "  renamed: checks/rinse-in-a-cup → checks/rinse-in-a-glass" in text
    assert "  added: learn/notes (4 numbers)" in text


def test_other_units_of_the_readers_are_the_cause_of_all_numbers(
    shop: ShopFolder, before: dict[str, Any]
) -> None:
    shop.change("shop.yaml", "units: metric", "units: us")
    found = compared(before, shop.record())
    assert {one.reasons[0].kind for one in found.numbers} == {"units of the readers"}
    assert any(page == "learn/the-spring.md" for page, *_ in told(found.numbers))


def test_a_warning_that_a_figure_takes_away(shop: ShopFolder, before: dict[str, Any]) -> None:
    shop.change("equipment/kitchen-cabinet.yaml", "brine_time: 25 min", "brine_time: 27 min")
    (text,) = compared(before, shop.record()).texts
    assert text.change.what == "removed"
    assert text.change.block.text.startswith("The slow rinse is short: ")
    file = "docs_src/equipment/kitchen-cabinet.yaml"
    assert causes([text]) == {(f"brine_time in {file}",)}


def test_a_word_that_a_calculator_says(shop: ShopFolder, before: dict[str, Any]) -> None:
    shop.change("learn/the-spring.md", "  hardness: 16 °dH", "  hardness: 6 °dH")
    found = compared(before, shop.record()).texts
    words = next(one for one in found if one.change.block.kind == "answer")
    assert (words.change.old.text, words.change.new.text) == ("very hard", "moderately hard")
    given = "hardness given to the worked example “harbor-flat-reading”"
    assert causes([words]) == {(f"{given} in docs_src/learn/the-spring.md",)}
