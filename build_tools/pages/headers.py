"""The file `_headers`, which several static hosts read: what to send with which path.

It says what a tag in a page cannot: who may frame a page, how long a file may be kept. Rules that
fit the same path never set the same header, because hosts join such headers in different ways.
"""

from __future__ import annotations

import re
from pathlib import Path

from build_tools.pages.security import policy

NAME = "_headers"

_EVERYWHERE = {
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "same-origin",
    "Permissions-Policy": "camera=(), geolocation=(), microphone=(), payment=(), usb=()",
}
_FOR_EVER = "public, max-age=31536000, immutable"
_ASK_FIRST = "no-cache"

# The theme names a file by its content: bundle.a5f9d56c.min.js
_NAMED_BY_CONTENT = re.compile(r"\.[0-9a-f]{8}\.(min\.)?(js|css)$")


def headers_file(site: Path, pages_policy: str, root: str) -> str:
    """Return the text of the file for a built site.

    pages_policy: that of the theme's pages. root: the path of the site on its host, with slashes
    at both ends. A path for which no rule says how long it may be kept is left to the host.
    """
    own_files = policy()
    page = _kept(_ASK_FIRST, f"{pages_policy}; frame-ancestors 'none'")
    rules = {f"{root}*": _EVERYWHERE, root: page}
    for path in sorted(site.iterdir()):
        if path.name == "assets":
            for asset in _kept_assets(path):
                place = asset.relative_to(site).as_posix()
                rules[f"{root}{place}{_splat(asset)}"] = _kept(_FOR_EVER, own_files)
        elif path.name != NAME:
            rules[f"{root}{path.name}{_splat(path)}"] = {
                "runtime": _kept(_FOR_EVER, own_files),
                "embed": _kept(_ASK_FIRST, own_files),  # these pages anybody may frame
            }.get(path.name, page)
    return "\n".join(_rule(path, headers) for path, headers in rules.items())


def read_rules(text: str) -> dict[str, dict[str, str]]:
    """Return the headers of each rule of a file by the rule's path, which may end in "*"."""
    rules: dict[str, dict[str, str]] = {}
    for block in text.split("\n\n"):
        path, *headers = block.splitlines()
        parted = [header.strip().partition(": ") for header in headers]
        rules[path] = {name: value for name, _, value in parted}
    return rules


def headers_for(rules: dict[str, dict[str, str]], path: str) -> dict[str, str]:
    """Return what hosts send with a path, by the rules of a file."""
    sent: dict[str, str] = {}
    for pattern, headers in rules.items():
        if path.startswith(pattern[:-1]) if pattern.endswith("*") else path == pattern:
            sent |= headers
    return sent


def root_of(rules: dict[str, dict[str, str]]) -> str:
    """Return the path of the site on its host, as the first rule has it."""
    return next(iter(rules)).removesuffix("*")


def _kept_assets(assets: Path) -> list[Path]:
    """Return the folders and files of assets whose names change with their content."""
    of_theme = [path for path in assets.rglob("*") if _NAMED_BY_CONTENT.search(path.name)]
    return sorted([*assets.glob("handbook-*"), *assets.glob("workbox-*"), *of_theme])


def _kept(how_long: str, its_policy: str) -> dict[str, str]:
    return {"Cache-Control": how_long, "Content-Security-Policy": its_policy}


def _splat(path: Path) -> str:
    return "/*" if path.is_dir() else ""


def _rule(path: str, headers: dict[str, str]) -> str:
    lines = [f"  {name}: {value}\n" for name, value in headers.items()]
    return f"{path}\n{''.join(lines)}"
