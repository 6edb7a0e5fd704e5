"""Documents of the tool stand in the site as guides, with links that lead somewhere there."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from mkdocs.config import load_config
from mkdocs.livereload import LiveReloadServer

from build_tools.pages.guides import DOCUMENTS, NOTES, linked


def test_each_guide_is_a_document_with_a_title() -> None:
    for name in NOTES:
        assert re.match(r"# \S", (DOCUMENTS / f"{name}.md").read_text("utf-8")), name


@pytest.mark.parametrize(
    ("written", "shown"),
    [
        ("See [the pack](class-pack.md#files).", "See [the pack](class-pack.md#files)."),
        ("See [diagnosis.md](diagnosis.md).", "See `docs/diagnosis.md`."),
        ("See [how it finds](diagnosis.md#well).", "See how it finds (`docs/diagnosis.md`)."),
        ("See [`DEVELOPERS.md`](../DEVELOPERS.md).", "See `DEVELOPERS.md`."),
        ("```yaml\n- [x](diagnosis.md)\n```", "```yaml\n- [x](diagnosis.md)\n```"),
        (
            "````\n```\n[x](diagnosis.md)\n```\n````\n[x](diagnosis.md)",
            "````\n```\n[x](diagnosis.md)\n```\n````\nx (`docs/diagnosis.md`)",
        ),
    ],
)
def test_links_lead_to_guides_and_other_documents_are_named(written: str, shown: str) -> None:
    assert linked(written) == shown


def test_no_link_of_a_document_leads_nowhere() -> None:
    for document in (*DOCUMENTS.glob("*.md"), DOCUMENTS.parent / "README.md"):
        for target in re.findall(r"\]\((?!https?:|#)([^)#\s]+)", outside_fences(document)):
            assert (document.parent / target).exists(), f"{document.name}: {target}"


def test_serve_follows_a_saved_guide() -> None:
    config = load_config(str(DOCUMENTS.parent / "mkdocs.yml"))
    server = LiveReloadServer(lambda: None, "127.0.0.1", 0, root=config.site_dir)
    config.plugins.on_serve(server, config=config, builder=server.builder)
    server.server_close()
    assert str(DOCUMENTS) in server._watched_paths


def outside_fences(document: Path) -> str:
    return re.sub(r"^(`{3,}).*?^\1$", "", document.read_text("utf-8"), flags=re.M | re.S)
