"""A tiny site as a build leaves it, with all that publishing looks at."""

from __future__ import annotations

import gzip
from pathlib import Path

from build_tools.pages.headers import NAME, headers_file
from build_tools.publishing import hash_list

POLICY = "default-src 'self'; script-src 'self' 'sha256-AbC+/='"
FILES = {
    "index.html": b"<!doctype html><title>Home</title>" + b"Water. " * 300,
    "404.html": b"<!doctype html><title>Not found</title>Not found",
    "learn/salt/index.html": b"<!doctype html><title>Salt</title>Salt",
    "assets/handbook-0123456789abcdef/page/form.js": b"export {};",
    "assets/handbook-0123456789abcdef/forms.css": b"p { margin: 0 }",
    "assets/images/unnamed.svg": b'<svg xmlns="http://www.w3.org/2000/svg"/>',
    "embed/embed-one/index.html": b"<!doctype html><title>Form</title>Form",
    "runtime/pyodide-1/python.wasm": b"\0asm" + b"\0" * 3000,
    "runtime/pyodide-1/python.mjs": b"export {};",
    "service-worker.js": b"// worker",
    "edition.json": b"{}",
    "search/search_index.json": b"{}",
    "manifest.webmanifest": b"{}",
    "a file with a space.csv": b"a,b",
}


def tiny_site(folder: Path, root: str = "/") -> Path:
    """Write the site, with the twins that a build makes of large files."""
    for name, content in FILES.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(content)
    large = folder / "runtime/pyodide-1/python.wasm"
    large.with_name("python.wasm.gz").write_bytes(gzip.compress(large.read_bytes(), mtime=0))
    large.with_name("python.wasm.br").write_bytes(b"what brotli makes of it")
    (folder / hash_list.NAME).touch()
    (folder / NAME).write_text(headers_file(folder, POLICY, root), "utf-8")
    hash_list.write_list(folder)
    return folder
