"""What can be done with a browser, whichever it is."""

from __future__ import annotations

import json
import time
from abc import ABC, abstractmethod
from typing import Any

# On a busy machine Python needs its time to start in the page; a right page is quick.
SECONDS_TO_WAIT = 60


class ScriptError(Exception):
    """A script in the page has failed."""


class Engine(ABC):
    """A browser with a fresh profile and one open page, until it is closed."""

    name: str

    @abstractmethod
    def visit(self, address: str) -> None:
        """Open an address, and return when its page has loaded."""

    @abstractmethod
    def close(self) -> None:
        """End the browser and remove its profile."""

    @abstractmethod
    def _type(self, selector: str, text: str) -> None:
        """Select what a field holds, and type over it with the keyboard."""

    @abstractmethod
    def _run(self, function: str, text: str) -> str:
        """Call a function of the page's language with a text and wait for its text."""

    def type(self, selector: str, text: str) -> None:
        """Type into a field as soon as it can be edited, in the place of what it holds."""
        editable = "(selector) => document.querySelector(selector)?.matches(':read-write')"
        self.wait_for(editable, selector, value=True)
        self._type(selector, text)

    def script(self, function: str, *given: Any) -> Any:
        """Return what a function of the page's language, async or not, makes of what is given.

        Both ways it is data that JSON can hold. Raises ScriptError where the function throws.
        """
        answer = json.loads(self._run(_IN_JSON % function, json.dumps(given)))
        if "problem" in answer:
            raise ScriptError(answer["problem"])
        return answer.get("value")

    def wait_for(self, function: str, *given: Any, value: Any) -> None:
        """Wait until a function gives a value. Raises TimeoutError, with what it gave instead."""
        end = time.monotonic() + SECONDS_TO_WAIT
        while (got := self.script(function, *given)) != value:
            if time.monotonic() > end:
                raise TimeoutError(f"{self.name} has {got!r} and never {value!r}")
            time.sleep(0.1)

    def text(self, selector: str) -> str:
        """Return the text of the first element, as it is shown."""
        return self.script("(selector) => document.querySelector(selector).innerText", selector)

    def wait_for_text(self, selector: str, text: str) -> None:
        """Wait until the first element shows a text, and nothing else."""
        self.wait_for(
            "(selector) => document.querySelector(selector)?.innerText", selector, value=text
        )


_IN_JSON = """
async (given) => {
  try {
    const value = await (%s)(...JSON.parse(given));
    return JSON.stringify({ value });
  } catch (problem) {
    return JSON.stringify({ problem: String(problem) });
  }
}
"""
