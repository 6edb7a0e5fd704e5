"""The settings of the web server in the container, made from the site's own file of headers.

So the server cannot send anything else than the hosts that read that file.
"""

from __future__ import annotations

from pathlib import Path

from build_tools.pages.headers import NAME, headers_for, read_rules, root_of
from build_tools.publishing.media_types import MEDIA_TYPES
from build_tools.templates import templates_in

PORT = 8080
_ENVIRONMENT = templates_in(
    Path(__file__).parent / "templates", are_html=False, keep_trailing_newline=True
)


def server_settings(site: Path, *, folder: str = "/srv/site", port: int = PORT) -> str:
    """Return the settings for a built site; `folder` is where the server finds it."""
    rules = read_rules((site / NAME).read_text("utf-8"))
    root = root_of(rules)
    return _ENVIRONMENT.get_template("Caddyfile.jinja").render(
        port=port,
        folder=_quoted(folder),
        root=root,
        rules=[
            (_quoted(path), [(name, _quoted(value)) for name, value in headers.items()])
            for path, headers in rules.items()
        ],
        types=[(ending, _quoted(_with_letters(types[0]))) for ending, types in MEDIA_TYPES.items()],
        hidden=_quoted(f"{folder}/{NAME}"),
        not_found=[
            (name, _quoted(value)) for name, value in headers_for(rules, f"{root}404.html").items()
        ],
    )


def _with_letters(media_type: str) -> str:
    return f"{media_type}; charset=utf-8" if media_type.startswith("text/") else media_type


def _quoted(text: str) -> str:
    """Return a text as the server reads one word; nothing in it is special between these signs."""
    if "`" in text:
        raise ValueError(f"the server's settings cannot hold the sign ` as in {text}")
    return f"`{text}`"
