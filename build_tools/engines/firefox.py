"""Firefox as it is installed, over WebDriver BiDi, which it speaks by itself."""

from __future__ import annotations

import json
import os
import re
import subprocess
import tempfile
import time
from pathlib import Path
from typing import Any

import websocket

from build_tools.engines.engine import SECONDS_TO_WAIT, Engine
from build_tools.set_up import engines

# No calls home. Firefox adds more of this kind by itself as soon as it is driven.
PREFERENCES = {
    "app.normandy.enabled": False,
    "app.update.disabledForTesting": True,
    "browser.safebrowsing.update.enabled": False,
    "browser.shell.checkDefaultBrowser": False,
    "browser.startup.page": 0,
    "datareporting.policy.dataSubmissionEnabled": False,
    "extensions.update.enabled": False,
    "network.captive-portal-service.enabled": False,
    "network.connectivity-service.enabled": False,
    "services.settings.server": "data:,#nowhere",
    "toolkit.telemetry.unified": False,
}

BACKSPACE = "\ue003"


class Firefox(Engine):
    """One Firefox, without a window."""

    name = "Firefox"

    def __init__(self, program: str | None = None) -> None:
        self._home = tempfile.TemporaryDirectory(prefix="firefox-", ignore_cleanup_errors=True)
        profile = Path(self._home.name, "profile")
        profile.mkdir()
        lines = [
            f"user_pref({json.dumps(name)}, {json.dumps(value)});\n"
            for name, value in PREFERENCES.items()
        ]
        (profile / "user.js").write_text("".join(lines), encoding="utf-8")
        command = [program or engines.firefox(), "--headless", "--no-remote"]
        with Path(self._home.name, "said.txt").open("w", encoding="utf-8") as said:
            self._process = subprocess.Popen(
                [*command, "--profile", str(profile), "--remote-debugging-port", "0"],
                # It does not start as one person in another's home.
                env={**os.environ, "HOME": self._home.name},
                stdin=subprocess.DEVNULL,
                stdout=said,
                stderr=said,
            )
        try:
            self._socket = websocket.create_connection(
                f"{self._address()}/session", timeout=SECONDS_TO_WAIT, suppress_origin=True
            )
        except BaseException:
            self._end()
            raise
        self._last_id = 0
        self._ask("session.new", capabilities={})
        (tab,) = self._ask("browsingContext.getTree")["contexts"]
        self._tab = tab["context"]

    def visit(self, address: str) -> None:
        """Open an address, and return when its page has loaded."""
        # On a busy machine the answer may come while scripts still reach the page that is left.
        self.script("() => { window.isLeft = true; }")
        self._ask("browsingContext.navigate", context=self._tab, url=address, wait="complete")
        self.wait_for("() => !window.isLeft && document.readyState", value="complete")

    def close(self) -> None:
        """End the browser and remove its profile."""
        try:
            self._ask("browser.close")
            self._process.wait(timeout=30)
        finally:
            self._socket.close()
            self._end()

    def _type(self, selector: str, text: str) -> None:
        self.script(
            """(selector) => {
              const field = document.querySelector(selector);
              field.focus();
              field.select();
            }""",
            selector,
        )
        keys = [
            {"type": kind, "value": key}
            for key in (BACKSPACE, *text)
            for kind in ("keyDown", "keyUp")
        ]
        actions = [{"type": "key", "id": "keyboard", "actions": keys}]
        self._ask("input.performActions", context=self._tab, actions=actions)

    def _run(self, function: str, text: str) -> str:
        answer = self._ask(
            "script.callFunction",
            functionDeclaration=function,
            arguments=[{"type": "string", "value": text}],
            target={"context": self._tab},
            awaitPromise=True,
        )
        return answer["result"]["value"]

    def _address(self) -> str:
        """Return where it listens, which it says while it starts."""
        while self._process.poll() is None:
            if listening := re.search(r"listening on (ws://\S+)\n", self._said()):
                return listening[1]
            time.sleep(0.05)
        raise OSError(f"Firefox did not start:\n{self._said()}")

    def _said(self) -> str:
        return Path(self._home.name, "said.txt").read_text(encoding="utf-8")

    def _end(self) -> None:
        self._process.kill()
        self._process.wait()
        self._home.cleanup()

    def _ask(self, method: str, **parameters: Any) -> dict[str, Any]:
        self._last_id += 1
        self._socket.send(json.dumps({"id": self._last_id, "method": method, "params": parameters}))
        while True:
            try:
                answer = json.loads(self._socket.recv())
            except websocket.WebSocketTimeoutException:
                raise TimeoutError(f"Firefox has not answered to {method}") from None
            if answer.get("id") == self._last_id:
                break
        if answer["type"] == "error":
            raise OSError(f"{method}: {answer['message']}")
        return answer["result"]
