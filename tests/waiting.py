"""Waiting in a browser test for what a page comes to, also under a policy that refuses `eval`."""

from __future__ import annotations

import time
from collections.abc import Callable
from typing import Any

from playwright.sync_api import Page

PATIENCE = 60  # seconds; a right page is quick, a busy machine is not


def until(page: Page, expression: str, argument: Any = None) -> Any:
    """Ask the page until the expression holds; return what it then gives.

    Playwright's own `wait_for_function` asks again from within the page, which the policy of the
    handbook's pages refuses: it works only where the first answer is already yes.
    """
    return until_given(page, lambda: page.evaluate(expression, argument), expression)


def until_given[T](page: Page, ask: Callable[[], T], what: str) -> T:
    """Ask until the answer is not empty, while the page goes on; return the answer."""
    end = time.monotonic() + PATIENCE
    while not (answer := ask()):
        if time.monotonic() > end:
            raise AssertionError(f"{what}: not within {PATIENCE} s on {page.url}")
        page.wait_for_timeout(20)
    return answer
