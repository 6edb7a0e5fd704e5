"""What pages may load and run: one content security policy for the whole site.

It stands in every page, because many hosts send no headers; `headers.py` says it again for those
that do. The theme writes a few scripts into its pages, which run because the policy has their
hashes; whatever else gets into a page's text does not run. The hashes come from the theme's own
templates, not from finished pages: a script that content brought along is never among them.
"""

from __future__ import annotations

import hashlib
import re
from base64 import b64encode
from collections.abc import Iterable

from jinja2 import Environment
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError

# The templates of the theme that write a script into pages.
_WRITING_SCRIPTS = ("base", "content", "palette")
_SCRIPT = re.compile(r"<script>(.*?)</script>", re.DOTALL)
_CHARSET = '<meta charset="utf-8">'

_ALLOWED = {
    "default-src": "'self'",  # of this, too: the next page, which some browsers fetch ahead
    "script-src": "'self' 'wasm-unsafe-eval'",  # Python in the page is WebAssembly
    "worker-src": "'self'",
    "connect-src": "'self' blob:",  # Python's own archive is handed over as a blob
    "img-src": "'self' data:",  # the theme's signs are data
    "style-src": "'self'",
    "frame-src": "'none'",
    "object-src": "'none'",
    "base-uri": "'none'",
    "form-action": "'none'",
}


def policy(scripts: Iterable[str] = (), **more: str) -> str:
    """Return a policy; `scripts` are sources of scripts besides the site's own files.

    more: further directives, with underscores for hyphens.
    """
    allowed = dict(_ALLOWED)
    allowed["script-src"] = " ".join([allowed["script-src"], *scripts])
    allowed |= {name.replace("_", "-"): sources for name, sources in more.items()}
    return "; ".join(f"{name} {sources}" for name, sources in allowed.items())


def theme_scripts(
    environment: Environment, config: MkDocsConfig, base_urls: Iterable[str]
) -> list[str]:
    """Return the hashes of the scripts that the theme writes into pages, as a policy names them.

    base_urls: the site's address as each page sees it; the theme puts it into a script. All pages
    get the hashes of all: with instant navigation, a page's policy outlives the page.
    """
    found: set[str] = set()
    for name in _WRITING_SCRIPTS:
        template = environment.get_template(f"partials/javascripts/{name}.html")
        scripts: set[str] = set()
        for base_url in base_urls:
            written = template.render(base_url=base_url, config=config)
            scripts.update(_SCRIPT.findall(written))
        if not scripts:
            raise PluginError(f"the theme's template {template.name} writes no script any more")
        found |= scripts
    return sorted(_hash(script) for script in found)


def with_policy(html: str, its_policy: str) -> str:
    """Return a page with the policy as early in it as can be.

    The character set comes before: a browser looks for it in the first bytes only.
    """
    before, charset, after = html.partition(_CHARSET)
    if not charset:
        raise PluginError(f"the theme's pages have no {_CHARSET} any more")
    return f"{before}{charset}{policy_tag(its_policy)}{after}"


def policy_tag(its_policy: str) -> str:
    """Return the tag that holds a policy."""
    return f'<meta http-equiv="Content-Security-Policy" content="{its_policy}">'


def _hash(script: str) -> str:
    return f"'sha256-{b64encode(hashlib.sha256(script.encode()).digest()).decode()}'"
