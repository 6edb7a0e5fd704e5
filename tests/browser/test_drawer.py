"""The list of pages on a narrow screen, by keys."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from playwright.sync_api import expect

from tests.browser.visits import Visits

SECOND = Path(__file__).parents[1] / "second_shop" / "mkdocs.yml"
IN_THE_LIST = "() => Boolean(document.activeElement.closest('.md-sidebar--primary'))"

#: Whether what has the focus is what a finger would touch there.
NOT_COVERED = """async () => {
  const one = document.activeElement;
  await Promise.all(document.getAnimations().map(({ finished }) => finished.catch(() => {})));
  const { left, top, width, height } = one.getBoundingClientRect();
  return one.contains(document.elementFromPoint(left + width / 2, top + height / 2));
}"""


def test_keys_open_the_list_and_pass_by_it_while_it_is_closed(
    visits: Visits, serve: Callable[..., str], built: Callable[[Path], Path]
) -> None:
    page = visits.page(viewport={"width": 320, "height": 500})  # as a desk at 400 %
    page.goto(f"{serve(built(SECOND))}learn/")
    menu = page.get_by_role("button", name="List of pages")
    expect(menu).to_have_attribute("aria-expanded", "false")
    expect(page.get_by_role("dialog", name="Search")).to_have_count(1)
    for _ in range(12):
        page.keyboard.press("Tab")
        assert not page.evaluate(IN_THE_LIST)

    menu.focus()
    page.keyboard.press("Enter")
    expect(menu).to_have_attribute("aria-expanded", "true")
    back = page.get_by_role("button", name="Learn")
    expect(back).to_be_focused()
    page.keyboard.press("Tab")
    assert page.evaluate(IN_THE_LIST)
    assert page.evaluate(NOT_COVERED)
    back.focus()
    page.keyboard.press("Enter")
    again = page.get_by_role("button", name="Learn")
    expect(again).to_be_focused()
    assert page.evaluate(NOT_COVERED)
    page.keyboard.press("Shift+Tab")
    assert page.evaluate(IN_THE_LIST)
    assert page.evaluate(NOT_COVERED)
    page.keyboard.press("Escape")
    expect(menu).to_have_attribute("aria-expanded", "false")
    expect(menu).to_be_focused()
