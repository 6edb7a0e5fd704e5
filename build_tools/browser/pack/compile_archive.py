"""Run inside the browser's Python: compile the calculators and what they need into one archive.

The archive serves as the whole standard library: it holds the modules that Python itself, Pyodide
and the calculators load, compiled by the very Python that will run them. Its entries are stored
and not deflated, so that the host's or the page's compression works on all of them together.
"""

import importlib
import io
import marshal
import sys
import zipfile
from importlib.util import MAGIC_NUMBER

# Loaded only on some paths: a misspelled name, a warning, an error that is told.
LOADED_LATE = ("difflib", "linecache", "traceback", "warnings")

# Flags of a compiled module that is never compared with a source: PEP 552.
UNCHECKED = (1).to_bytes(4, "little") + bytes(8)

FIXED_DATE = (2020, 1, 1, 0, 0, 0)


def archive(wheel):
    """Return the archive as bytes; the same wheel gives the same bytes."""
    sys.path.insert(0, wheel)
    for name in (*LOADED_LATE, *modules_in(wheel)):
        importlib.import_module(name)
    content = dict(filter(None, map(compiled, list(sys.modules.values()))))
    made = io.BytesIO()
    with zipfile.ZipFile(made, "w", zipfile.ZIP_STORED) as file:
        for name in sorted(content):
            file.writestr(zipfile.ZipInfo(name, FIXED_DATE), content[name])
    return made.getvalue()


def modules_in(wheel):
    """Return the names of the modules in a wheel."""
    with zipfile.ZipFile(wheel) as file:
        paths = [name.removesuffix(".py") for name in file.namelist() if name.endswith(".py")]
    return [path.removesuffix("/__init__").replace("/", ".") for path in paths]


def compiled(module):
    """Return the path and the content of a compiled module, or None for one that has no source.

    Docstrings and tables of line numbers are left out: they serve nobody in a page.
    """
    spec = getattr(module, "__spec__", None)
    if spec is None or not hasattr(spec.loader, "get_source"):
        return None
    source = spec.loader.get_source(spec.name)
    if source is None:  # of a module that is frozen into Python itself
        return None
    ending = "/__init__" if spec.submodule_search_locations is not None else ""
    path = spec.name.replace(".", "/") + ending
    code = compile(source, f"{path}.py", "exec", dont_inherit=True, optimize=2)
    return f"{path}.pyc", MAGIC_NUMBER + UNCHECKED + marshal.dumps(without_lines(code))


def without_lines(code):
    """Return code without its tables of line numbers, nor those of the code inside it."""
    inner = tuple(without_lines(one) if hasattr(one, "co_code") else one for one in code.co_consts)
    return code.replace(co_consts=inner, co_linetable=b"")
