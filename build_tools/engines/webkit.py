"""WebKitGTK: the engine nearest to a phone's Safari that runs on Linux.

Its plainest browser draws on a display that nobody sees, and its own driver steers it.
"""

from __future__ import annotations

import os
import subprocess
import tempfile
from pathlib import Path

from selenium.webdriver import Remote
from selenium.webdriver.common.by import By
from selenium.webdriver.remote.client_config import ClientConfig
from selenium.webdriver.remote.remote_connection import RemoteConnection
from selenium.webdriver.webkitgtk.options import Options
from selenium.webdriver.webkitgtk.service import Service

from build_tools.engines.engine import SECONDS_TO_WAIT, Engine
from build_tools.set_up import engines


class WebKit(Engine):
    """One browser with one page."""

    name = "WebKitGTK"

    def __init__(self, programs: engines.WebKit | None = None) -> None:
        programs = programs or engines.webkit()
        self._home = tempfile.TemporaryDirectory(prefix="webkit-", ignore_cleanup_errors=True)
        self._display = _Display(programs.display)
        options = Options()
        options.binary_location = programs.mini_browser
        options.add_argument("--automation")
        home = Path(self._home.name)
        folders = {f"XDG_{name}_HOME": str(home / name) for name in ("CACHE", "CONFIG", "DATA")}
        environment = {**os.environ, **folders, "HOME": str(home), "GDK_BACKEND": "x11"}
        environment["DISPLAY"] = self._display.name
        self._service = Service(programs.driver, env=environment)
        try:
            self._service.start()
            connection = RemoteConnection(client_config=ClientConfig(self._service.service_url))
            self._driver = Remote(connection, options=options)
        except BaseException:
            self._end()
            raise
        self._driver.set_script_timeout(SECONDS_TO_WAIT)

    def visit(self, address: str) -> None:
        """Open an address, and return when its page has loaded."""
        self._driver.get(address)

    def close(self) -> None:
        """End the browser and remove its profile."""
        try:
            self._driver.quit()
        finally:
            self._end()

    def _type(self, selector: str, text: str) -> None:
        field = self._driver.find_element(By.CSS_SELECTOR, selector)
        field.clear()
        field.send_keys(text)

    def _run(self, function: str, text: str) -> str:
        return self._driver.execute_async_script(
            f"const [given, done] = arguments; ({function})(given).then(done);", text
        )

    def _end(self) -> None:
        self._service.stop()
        self._display.close()
        self._home.cleanup()


class _Display:
    """A display in memory, on the first number that is free."""

    def __init__(self, program: str) -> None:
        number, told = os.pipe()
        with os.fdopen(number) as answer:
            self._process = subprocess.Popen(
                [
                    program,
                    "-displayfd",
                    str(told),
                    "-screen",
                    "0",
                    "1280x1024x24",
                    "-nolisten",
                    "tcp",
                ],
                pass_fds=[told],
                stdin=subprocess.DEVNULL,
                stdout=subprocess.DEVNULL,
                stderr=subprocess.DEVNULL,
            )
            os.close(told)
            self.name = f":{answer.readline().strip()}"

    def close(self) -> None:
        self._process.terminate()
        self._process.wait()
