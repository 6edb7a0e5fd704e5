"""The files for other sites: each calculator's bare page, the script, and the text to copy."""

from __future__ import annotations

import json
from dataclasses import dataclass
from pathlib import Path

from mkdocs.config.defaults import MkDocsConfig
from mkdocs.structure.files import Files

from build_tools.pages.assets import (
    EMBEDDED_SCRIPT,
    EMBEDDED_STYLE,
    ICON,
    SCHEME_SCRIPT,
    UNITS_SCRIPT,
    Assets,
)
from build_tools.pages.security import policy_tag
from build_tools.pages.units.elements import with_elements
from build_tools.pages.units.switch import switch
from build_tools.templates import templates_in
from calculators import CALCULATORS
from calculators.declare import Calculator

_FOLDER = Path(__file__).parent
_ENVIRONMENT = templates_in(_FOLDER)

SCRIPT = "embed.js"
# What the script's source has in the place of the calculators' titles.
_TITLES = '{ "calculator-name": "Its title" }'

# Stands in a snippet until a script of the page, which knows where the page is, puts it right.
UNKNOWN_SITE = "https://address-of-this-handbook.example/"


@dataclass(frozen=True)
class Surroundings:
    """What bare pages have from the site: addresses of files in it, and its own words.

    edition: the words that name the edition, as HTML.
    """

    styles: list[str]
    scheme_script: str
    units_script: str
    own_units: str
    script: str
    icon: str
    site_name: str
    language: str
    policy: str
    edition: str

    @classmethod
    def of_site(
        cls, config: MkDocsConfig, files: Files, assets: Assets, *, policy: str, edition: str
    ) -> Surroundings:
        """Return what they have from a site with these settings, files and assets."""
        theme = sorted(
            file.src_uri
            for file in files
            if file.src_uri.startswith("assets/stylesheets/") and file.src_uri.endswith(".css")
        )
        return cls(
            styles=[*theme, assets.address(EMBEDDED_STYLE)],
            scheme_script=assets.address(SCHEME_SCRIPT),
            units_script=assets.address(UNITS_SCRIPT),
            own_units=config.extra["own_units"],
            script=assets.address(EMBEDDED_SCRIPT),
            icon=assets.address(ICON),
            site_name=config.site_name,
            language=config.theme["language"],
            policy=policy,
            edition=edition,
        )


def page_address(calculator: Calculator) -> str:
    """Return where in the site a calculator's bare page stands, as if it were a source."""
    return f"embed/{calculator.name}.md"


def embedding_files(forms: dict[str, str], surroundings: Surroundings) -> dict[str, str]:
    """Return the content of each file by its address; `forms` has each calculator's form."""
    template = _ENVIRONMENT.get_template("page.html.jinja")
    files = {
        f"embed/{name}/index.html": with_elements(
            template.render(
                calculator=CALCULATORS[name],
                form=form,
                policy_tag=policy_tag(surroundings.policy),
                site=surroundings,
                units_switch=switch(surroundings.own_units),
            )
        )
        for name, form in forms.items()
    }
    titles = {name: CALCULATORS[name].title for name in forms}
    source = (_FOLDER / SCRIPT).read_text(encoding="utf-8")
    if _TITLES not in source:
        raise ValueError(f"{SCRIPT} has no place for the calculators' titles")
    return files | {SCRIPT: source.replace(_TITLES, json.dumps(titles, ensure_ascii=False))}


def snippet_html(calculator: Calculator, units: str, site_url: str | None) -> str:
    """Return the part of a calculator's page that has the text to copy, as one block of HTML."""
    typed = [one for one in calculator.inputs if not one.choices and one.example is not None]
    preset = f'input-{typed[0].name}="{typed[0].example_text(units)}"' if typed else ""
    template = _ENVIRONMENT.get_template("snippet.html.jinja")
    return template.render(
        calculator=calculator, site=site_url or UNKNOWN_SITE, unknown=UNKNOWN_SITE, preset=preset
    ).strip()
