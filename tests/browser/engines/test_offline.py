"""The handbook without a network in the other browsers."""

from __future__ import annotations

import shutil
from pathlib import Path

from build_tools.engines.engine import Engine
from tests.browser.engines.forms import wait_for_answer
from tests.browser.host import hosted

CALCULATOR = "work-out/hardness-units/"
FORM = "section.live-form"
HARDNESS = "section.live-form [data-input=hardness] input"
KEPT = """async () => {
  const keys = async (name) => (await (await caches.open(name)).keys()).length;
  return navigator.serviceWorker.controller !== null && (await keys("pages")) > 0;
}"""


def test_a_second_visit_without_a_network_answers(
    engine: Engine, handbook_folder: Path, tmp_path: Path
) -> None:
    with hosted(shutil.copytree(handbook_folder, tmp_path / "site")) as host:
        engine.visit(host.address + CALCULATOR)
        engine.type(HARDNESS, "22 gpg")
        wait_for_answer(engine, FORM)
        engine.wait_for(KEPT, value=True)
        engine.wait_for(
            "async () => (await (await caches.open('runtime parts')).keys()).length >= 4",
            value=True,
        )
        host.has_network = False
        engine.visit(host.address + CALCULATOR)
        engine.wait_for(
            "() => document.querySelector('.edition-note')?.textContent.slice(0, 20)",
            value="There is no network.",
        )
        engine.type(HARDNESS, "24 gpg")
        wait_for_answer(engine, FORM)


def test_a_kept_handbook_opens_where_nobody_has_been(
    engine: Engine, handbook_folder: Path, tmp_path: Path
) -> None:
    with hosted(shutil.copytree(handbook_folder, tmp_path / "site")) as host:
        engine.visit(host.address + "reference/on-this-phone/")
        engine.wait_for(
            "() => document.querySelector('[data-part=status]').textContent.slice(0, 8)",
            value="It takes",
        )
        engine.script("() => document.querySelector('[data-action=keep]').click()")
        engine.wait_for(
            "() => document.querySelector('[data-part=status]').textContent.slice(0, 5)",
            value="Done.",
        )
        engine.wait_for("() => navigator.serviceWorker.controller !== null", value=True)
        host.has_network = False
        engine.visit(host.address + CALCULATOR)
        engine.type(HARDNESS, "26 gpg")
        wait_for_answer(engine, FORM)
