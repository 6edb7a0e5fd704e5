"""What makes a page calculate: the calculators' wheel, the runtime, the form, its scripts."""

from __future__ import annotations


class BrowserFilesError(Exception):
    """The files for the browser could not be made; the message says what to do about it."""
