"""Prints of single sheets: the pocket sheet, and sign-off sheets for people."""

from __future__ import annotations

import copy
from collections.abc import Sequence

from lxml import html

from build_tools.content.addresses import POCKET_SHEET
from build_tools.content.handbook import Handbook
from build_tools.printing.built_site import BuiltSite
from build_tools.printing.choosing import SIGN_OFF, page_name
from build_tools.printing.paper_page import PaperPages
from build_tools.set_up.failure import Failure


def pocket_sheet(handbook: Handbook, site: BuiltSite) -> list[html.HtmlElement]:
    """Return the pocket sheet: two sides of one sheet."""
    if handbook.shop.content.pocket_sheet is None:
        raise Failure('This shop has no pocket sheet: shop.yaml says none under "pocket_sheet".')
    return [_page(site, page_name(POCKET_SHEET))]


def sign_off(handbook: Handbook, site: BuiltSite, people: Sequence[str]) -> list[html.HtmlElement]:
    """Return a sheet for each person, or a blank one, and behind them what signs a skill off."""
    if not handbook.skills:
        raise Failure("This handbook has no skills to sign off: write them into skills.yaml.")
    page = _page(site, page_name(SIGN_OFF))
    children = list(page)
    rules_begin = next(number for number, child in enumerate(children) if child.tag == "h2")
    rules = html.Element("article", page.attrib)
    rules.extend(children[rules_begin:])
    sheets = []
    for number, name in enumerate(people or [""], 1):
        sheet = copy.deepcopy(page)
        sheet.set("id", f"sheet-{number}")
        if name.strip():
            sheet.find("h1").text += f": {name.strip()}"
            sheet.xpath(".//span[@data-sheet='name']")[0].text = name.strip()
        sheets.append(sheet)
    return [*sheets, rules]


def _page(site: BuiltSite, name: str) -> html.HtmlElement:
    return PaperPages(site, [name]).page(name, 1)
