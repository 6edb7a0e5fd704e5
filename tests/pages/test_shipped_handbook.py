"""The pages of the shipped handbook, read as its readers do."""

from __future__ import annotations

import re
from pathlib import Path

from build_tools.checks import check_handbook
from build_tools.content.handbook import Handbook
from build_tools.content.unit_figures import WORKED_OUT
from build_tools.content.values import Values
from build_tools.pages.related import MOST, MOST_IN_A_LIST
from calculators import run
from calculators.units import METRIC
from tests.pages.conftest import Reader, page


def test_the_shipped_handbook_has_no_problem(handbook: Handbook) -> None:
    assert [str(one) for one in check_handbook(handbook, Values(handbook))] == []


def test_cautions_stand_in_full_before_the_steps(
    shipped: Path, text_of: Reader, handbook: Handbook
) -> None:
    for procedure in handbook.procedures.values():
        text = text_of(page(shipped, procedure.address))
        for name in procedure.content.cautions:
            caution = handbook.cautions[name].content
            first_words = " ".join(caution.text.split("{{")[0].split()[:6])
            assert first_words in text, (procedure.id, name)
            assert text.index(first_words) < text.rindex("Steps"), (procedure.id, name)


def test_an_expected_reading_is_worked_out_for_every_unit(
    shipped: Path, text_of: Reader, handbook: Handbook
) -> None:
    text = text_of(page(shipped, "procedures/check-the-refill.md"))
    assert len(handbook.carried) >= 2
    for unit in handbook.carried:
        content = unit.content
        given = {
            "salt": content.salt_per_regeneration.text,
            "refill_flow": content.refill_flow.text,
            "time_step": content.refill_step.text,
        }
        units = content.units or handbook.units
        answer = run("brine-refill", given, units)["values"]["refill_time"]["shown"]
        assert f"{content.short_title} {answer}".replace("\u00a0", " ") in text


def test_a_decision_leads_on_to_its_page(shipped: Path, handbook: Handbook) -> None:
    followed = 0
    for procedure in handbook.procedures.values():
        here = page(shipped, procedure.address)
        links = re.findall(r'href="([^"#]+)"', here.read_text(encoding="utf-8"))
        targets = {(here.parent / link).resolve() for link in links}
        in_steps = [one for step in procedure.content.steps for one in step.decide]
        for decision in [*procedure.content.decide, *in_steps]:
            if decision.go_to:
                assert shipped.resolve() / decision.go_to in targets, (procedure.id, decision.go_to)
                followed += 1
    assert followed > 5


def test_a_fault_shows_every_saying_of_the_customer(
    shipped: Path, text_of: Reader, handbook: Handbook
) -> None:
    for fault in handbook.faults.values():
        text = text_of(page(shipped, fault.address))
        for saying in fault.content.customer_says:
            assert f"“{' '.join(saying.split())}”" in text, fault.id


def test_all_numbers_lists_every_fact_with_its_basis_and_uses(
    shipped: Path, text_of: Reader, handbook: Handbook
) -> None:
    values = Values(handbook)
    check_handbook(handbook, values)
    html = page(shipped, "reference/numbers.md").read_text(encoding="utf-8")
    text = text_of(page(shipped, "reference/numbers.md"))
    for name, fact in handbook.facts.items():
        assert f'id="{name}"' in html
        shown = values.showing.fact(fact.content).replace("\u00a0", " ")
        assert shown in text, name
        if fact.content.basis == "published":
            assert f'href="../sources/#{fact.content.source}"' in html, name
        for _, _, address in values.uses.get(name, ()):
            assert f"/{address.removesuffix('.md').split('/')[-1]}/" in html, (name, address)


def test_lessons_follow_each_other_in_their_order(shipped: Path, handbook: Handbook) -> None:
    lessons = sorted(handbook.lessons.values(), key=lambda lesson: lesson.content.order)
    assert len(lessons) >= 4
    for one, following in zip(lessons, lessons[1:], strict=False):
        html = page(shipped, one.address).read_text(encoding="utf-8")
        assert f'Next: <a href="../{following.id}/">' in html


def test_a_worked_example_shows_its_story_and_its_stated_answers(
    shipped: Path, text_of: Reader, handbook: Handbook
) -> None:
    assert handbook.examples
    for example in handbook.examples.values():
        text = text_of(page(shipped, example.address))
        assert f"Worked example: {example.content.title}" in text
        for answer in example.content.answers.values():
            assert answer.replace("\u00a0", " ") in text.replace(",", "") or answer in text


def test_the_equipment_page_works_out_settings_for_the_typical_home(
    shipped: Path, text_of: Reader, handbook: Handbook
) -> None:
    home = handbook.shop.content.typical_home
    with_iron = handbook.facts["longest_interval_iron"].content.value.text
    for unit in handbook.carried:
        given = {
            "hardness": home.hardness.text,
            "iron": home.iron.text,
            "setting_step": unit.content.hardness_step.text,
        }
        units = unit.content.units or handbook.units
        setting = run("hardness-setting", given, units)["values"]["setting"]["shown"]
        text = text_of(page(shipped, unit.address))
        assert f"Enter in the control {setting}".replace("\u00a0", " ") in text
        assert f"Regenerate at least every {with_iron}" in text


def us_units(text: str) -> list[str]:
    """Return the quantities in US units that a text shows."""
    units = "|".join(re.escape(unit) for unit in METRIC if unit != "gpg per mg/L")
    return re.findall(rf"\d[\d.,]*\s(?:{units})(?![\w/³²])", text)


def test_a_metric_unit_in_a_us_shop_is_metric_on_its_page_and_in_its_rows(
    shipped: Path, text_of: Reader, handbook: Handbook
) -> None:
    assert handbook.units == "us"
    unit = handbook.equipment["apartment-softener"]
    assert us_units(text_of(page(shipped, unit.address))) == []
    rows = 0
    for procedure in handbook.procedures.values():
        html = page(shipped, procedure.address).read_text(encoding="utf-8")
        for row in re.findall(rf'<tr>\s*<td[^>]*data-unit="{unit.id}".*?</tr>', html, re.DOTALL):
            assert us_units(row) == [], procedure.id
            rows += 1
    assert rows > 3


def test_every_unit_is_in_good_order(handbook: Handbook) -> None:
    """Its figures call for no warning, but for what holds of many units.

    A large unit stands idle in the typical home, and by one equation many beds reach the top.
    """
    values = Values(handbook)
    for unit in handbook.carried:
        with values.showing.in_units_of(unit):
            for name, given in {one.calculator: one.given for one in WORKED_OUT.values()}.items():
                result = values.figures.worked_out(unit, name, given)
                assert result["problems"] == {}, (unit.id, name)
                if name not in ("regeneration-interval", "bed-expansion"):
                    assert result["warnings"] == [], (unit.id, name)


def test_the_kinds_of_control_have_their_own_settings(
    shipped: Path, text_of: Reader, handbook: Handbook
) -> None:
    for unit in handbook.carried:
        text = text_of(page(shipped, unit.address))
        assert ("Set the counter to" in text) is (unit.content.control != "time clock")
        assert "Days between regenerations" in text


FOOT = '<nav aria-label="Pages that lead here" class="related">'
LINK_AT_THE_FOOT = re.compile(r'<li><a href="([^"]+)">')


def links_at_the_foot(site: Path, address: str) -> list[str]:
    """Return the addresses that the lists at the foot of a page lead to."""
    here = page(site, address)
    html = here.read_text(encoding="utf-8")
    foot = html.partition(FOOT)[2]
    links = LINK_AT_THE_FOOT.findall(foot.partition("</nav>")[0])
    return [(here.parent / link).resolve().relative_to(site.resolve()).as_posix() for link in links]


def test_a_calculator_names_where_it_is_used(shipped: Path, handbook: Handbook) -> None:
    named = 0
    for example in handbook.examples.values():
        foot = links_at_the_foot(shipped, f"work-out/{example.content.calculate}.md")
        page_of_example = example.address.removesuffix(".md")
        assert page_of_example in foot or len(foot) >= MOST_IN_A_LIST, example.id
        named += page_of_example in foot
    assert named > 5


def test_the_foot_of_a_page_is_short_and_repeats_no_link(shipped: Path, handbook: Handbook) -> None:
    entries = [*handbook.procedures.values(), *handbook.faults.values(), *handbook.checks.values()]
    found = 0
    for entry in [*entries, *handbook.lessons.values()]:
        foot = links_at_the_foot(shipped, entry.address)
        assert len(foot) == len(set(foot)) <= MOST, entry.id
        here = page(shipped, entry.address)
        article = here.read_text(encoding="utf-8").partition(FOOT)[0]
        article = article.partition("<article")[2]
        above = {
            (here.parent / link.partition("#")[0]).resolve()
            for link in re.findall(r'href="([^"#:]+)"', article)
        }
        assert not above & {shipped.resolve() / one for one in foot}, entry.id
        found += len(foot)
    assert found > 50


def test_the_pocket_sheet_is_made_of_the_content(
    shipped: Path, text_of: Reader, handbook: Handbook
) -> None:
    text = text_of(page(shipped, "reference/pocket-sheet.md"))
    sheet = handbook.shop.content.pocket_sheet
    procedure = handbook.procedures[sheet.procedure].content
    assert all(f" {number} " in text for number in range(1, len(procedure.steps) + 1))
    for stage in ("Water tests", "Power and clock", "Salt and brine"):
        assert stage in text
    for name in procedure.cautions:
        assert handbook.cautions[name].content.title in text
    for result in handbook.checks[sheet.check].content.results:
        assert f"{result.label} {result.means}" in text
    for name in sheet.tables:
        assert handbook.tables[name].content.title in text


def test_the_glossary_has_every_term_with_its_anchor(
    shipped: Path, text_of: Reader, handbook: Handbook
) -> None:
    address = page(shipped, "reference/glossary.md")
    html, text = address.read_text(encoding="utf-8"), text_of(address)
    assert len(handbook.glossary) >= 70
    for name, entry in handbook.glossary.items():
        assert f'id="{name}"' in html
        assert " ".join(entry.content.means.split("{{")[0].split()) in text
        for word in entry.content.instead_of:
            assert f"“{word}”" in text
    terms = [entry.content.term for entry in handbook.glossary.values()]
    places = [text.index(f" {term} ", text.index("One word")) for term in sorted(terms)]
    assert places[0] < places[-1]


def test_terms_lead_to_the_glossary_and_are_searched_once(shipped: Path) -> None:
    html = page(shipped, "faults/salt-bridge.md").read_text(encoding="utf-8")
    assert html.count('href="../../reference/glossary/#brine"') == 1
    assert 'class="term"' not in page(
        shipped, "faults/index.md".replace("/index.md", "")
    ).read_text(encoding="utf-8")
    assert "in the glossary" not in (shipped / "search" / "search_index.json").read_text(
        encoding="utf-8"
    )


def test_every_abbreviation_is_spelled_out(shipped: Path, text_of: Reader) -> None:
    text = text_of(page(shipped, "reference/abbreviations.md"))
    for row in ("gpg grains per gallon", "°dH German degrees", "psi pounds per square inch"):
        assert row in text


def test_a_caution_names_every_page_that_prints_it(shipped: Path, handbook: Handbook) -> None:
    html = page(shipped, "reference/cautions.md").read_text(encoding="utf-8")
    sections = re.split(r'<h2 id="([\w-]+)">', html)
    printed_on = dict(zip(sections[1::2], sections[2::2], strict=True))
    for group in (handbook.procedures, handbook.faults, handbook.checks):
        for entry in group.values():
            for name in entry.content.cautions:
                assert f'href="../../{entry.address.removesuffix(".md")}/"' in printed_on[name]


def test_a_source_names_every_fact_it_backs_and_a_fact_every_page(
    shipped: Path, handbook: Handbook
) -> None:
    sources = page(shipped, "reference/sources.md").read_text(encoding="utf-8")
    backed = dict(re.findall(r'<dt><span id="([\w-]+)">.*?<dd>(.*?)</dd>', sources, re.DOTALL))
    numbers = page(shipped, "reference/numbers.md").read_text(encoding="utf-8")
    used = dict(re.findall(r'<dt><span id="(\w+)">.*?<dd>(.*?)</dd>', numbers, re.DOTALL))
    values = Values(handbook)
    assert check_handbook(handbook, values) == []
    for name, entry in handbook.facts.items():
        if source := entry.content.source:
            assert f'href="../numbers/#{name}"' in backed[source]
        for _, _, address in values.uses[name]:
            folder = address.removesuffix(".md").removesuffix("index").removesuffix("/")
            link = f"../../{folder}/" if not address.startswith("reference/") else ""
            assert f'href="{link}"' in used[name] or not link or folder == "", (name, address)
