"""The pages of faults and checks, and the page that leads from a complaint to its cause."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from build_tools.content.handbook import Handbook
from build_tools.diagnosis.shown_chances import shown_chances
from build_tools.pages.chances import how_long, how_often, of_ten, percent
from build_tools.pages.diagnosis_pages import SPEAKS_FROM
from calculators.diagnosis.by_complaint import likely_causes
from tests.pages.conftest import Reader, page


def part(html: str, start: str, end: str) -> str:
    """Return the HTML from the id `start` to the next of the markup `end`."""
    begun = html.index(f'id="{start}"')
    found = html.find(end, begun)
    return html[begun : found if found > 0 else len(html)]


def test_the_handbook_has_the_faults_and_checks_of_the_trade(handbook: Handbook) -> None:
    assert len(handbook.faults) == 48
    assert len(handbook.checks) == 39
    shares = [fault.content.share_of_calls.quantity.number for fault in handbook.faults.values()]
    assert sum(shares) == pytest.approx(100)
    for name, fault in handbook.faults.items():
        assert len(fault.content.customer_says) >= 3, name
        assert fault.content.mistaken_for, name
        assert fault.content.proved_by, name


def test_a_check_names_the_faults_each_abnormal_result_speaks_for(
    shipped: Path, handbook: Handbook
) -> None:
    faults = shown_chances(handbook)["faults"]
    for name, check in handbook.checks.items():
        html = page(shipped, check.address).read_text(encoding="utf-8")
        for result in check.content.results[0 if name == "complaint" else 1 :]:
            of_result = part(html, result.name, "<h")
            speaking = {
                fault
                for fault, one in faults.items()
                if one["likelihoods"].get(name, {}).get(result.name, 0) >= SPEAKS_FROM
            }
            linked = set(re.findall(r'href="\.\./\.\./faults/([\w-]+)/"', of_result))
            assert linked == speaking, (name, result.name)


def test_a_fault_tells_how_often_each_result_comes_and_who_judged_it(
    shipped: Path, text_of: Reader, handbook: Handbook
) -> None:
    for name, fault in shown_chances(handbook)["faults"].items():
        text = text_of(page(shipped, f"faults/{name}.md"))
        assert f"{percent(fault['share_of_calls'])} of our calls.".replace("\u00a0", " ") in text
        assert f"The repair takes about {how_long(fault['minutes'])}".replace("\u00a0", " ") in text
        assert "What is judged rests on this: common practice, no source." in text
        assert ("simulated homes" in text) is bool(fault["counted"]), name
        for check, chances in fault["likelihoods"].items():
            for result, chance in chances.items():
                label = handbook.checks[check].content.result(result).label.lower()
                assert f"{how_often(chance)}: {label}" in text, (name, check, result)


def test_a_fault_tells_what_to_do_before_the_long_table(shipped: Path, handbook: Handbook) -> None:
    for name in handbook.faults:
        html = page(shipped, f"faults/{name}.md").read_text(encoding="utf-8")
        parts = ("customer-says", "seen", "confirm", "remedy", "prevent", "likelihoods")
        places = [html.index(f'<h2 id="{one}"') for one in parts]
        assert places == sorted(places), name
        for one in ("confirm", "remedy", "prevent", "likelihoods"):
            assert f'<a href="#{one}">' in html, name


def test_a_check_shows_what_it_erases_and_what_ends_the_work(
    shipped: Path, text_of: Reader, handbook: Handbook
) -> None:
    for check in handbook.checks.values():
        html = page(shipped, check.address).read_text(encoding="utf-8")
        text = text_of(page(shipped, check.address))
        if check.content.erases:
            erased = part(html, "erases", "</ul>")
            for name in check.content.erases:
                assert f'href="../{name}/"' in erased, (check.id, name)
        for danger in check.content.stop_if:
            assert "Stop, make it safe" in text
            assert " ".join(danger.split("{{")[0].split()) in text, (check.id, danger)
        if check.content.opens:
            assert "Ask the customer first." in text, check.id


def test_opening_and_starting_come_with_what_they_erase(handbook: Handbook) -> None:
    evidence = {"cold-and-hot-pair", "settings-and-counters", "brine-level", "brine-hydrometer"}
    for check in handbook.checks.values():
        if check.content.opens or check.id == "manual-start":
            assert evidence <= set(check.content.erases), check.id
        if check.content.opens:
            assert "pressure" in check.content.cautions, check.id


def test_each_complaint_leads_to_its_likeliest_causes(
    shipped: Path, text_of: Reader, handbook: Handbook
) -> None:
    html = (shipped / "faults" / "index.html").read_text(encoding="utf-8")
    assert html.count('<section class="find-the-cause stacked">') == 1
    faults = shown_chances(handbook)["faults"]
    for complaint in handbook.checks["complaint"].content.results:
        causes = likely_causes(faults, complaint.name)
        assert causes, complaint.name
        of_complaint = part(html, complaint.name, "<h")
        linked = re.findall(r'href="([\w-]+)/"', of_complaint)
        assert linked == [name for name, _ in causes[:8]], complaint.name
        assert f"{of_ten(causes[0][1])} such calls" in of_complaint


def test_the_checks_stand_in_their_running_order(shipped: Path, handbook: Handbook) -> None:
    html = (shipped / "faults" / "index.html").read_text(encoding="utf-8")
    in_order = part(html, "checks", "</section>")
    linked = re.findall(r'href="\.\./checks/([\w-]+)/"', in_order)
    assert linked == [*shown_chances(handbook)["checks"]]


def test_checks_stand_under_find_the_cause(shipped: Path) -> None:
    html = page(shipped, "checks/rod-through-salt.md").read_text(encoding="utf-8")
    active = html[html.index("md-nav--primary") :]
    assert active.index("Find the cause") < active.index('href="../aerators/"')
    assert active.index('href="../aerators/"') < active.index("Work it out")


def test_a_complaint_of_another_shop_leads_to_its_own_causes(second: Path) -> None:
    html = (second / "faults" / "index.html").read_text(encoding="utf-8")
    assert re.findall(r'href="([\w-]+)/"', part(html, "water-hard", "<h")) == [
        "dripping-cistern",
        "crushed-hose",
    ]


@pytest.mark.parametrize(
    ("chance", "word"),
    [
        (1, "almost always"), (0.9, "almost always"), (0.89, "mostly"), (0.65, "mostly"),
        (0.5, "often"), (0.35, "often"), (0.2, "sometimes"), (0.1, "sometimes"),
        (0.05, "seldom"), (0.001, "seldom"),
    ],
)  # fmt: skip
def test_a_chance_has_a_plain_word(chance: float, word: str) -> None:
    assert how_often(chance) == word


@pytest.mark.parametrize(
    ("share", "words"),
    [
        (0.97, "nearly all"), (0.62, "about 6 of 10"), (0.06, "about 1 of 10"),
        (0.04, "about 1 of 20"), (0.01, "fewer than 1 of 40"),
    ],
)  # fmt: skip
def test_a_share_is_said_as_a_person_says_it(share: float, words: str) -> None:
    assert of_ten(share) == words


@pytest.mark.parametrize(
    ("minutes", "shown"),
    [
        (0, "no time"),
        (0.25, "15\u00a0s"),
        (0.35, "20\u00a0s"),
        (1.35, "1.4\u00a0min"),
        (10, "10\u00a0min"),
    ],
)
def test_minutes_are_shown_as_a_watch_shows_them(minutes: float, shown: str) -> None:
    assert how_long(minutes) == shown
