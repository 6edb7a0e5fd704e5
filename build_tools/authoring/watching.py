"""Waiting for saved files."""

from __future__ import annotations

import queue
from collections.abc import Iterator
from pathlib import Path

from watchdog.events import FileSystemEvent, FileSystemEventHandler
from watchdog.observers.polling import PollingObserver

#: Seconds between two looks at the folder, and of quiet after which a save is over.
LOOK, QUIET = 0.5, 0.2


class _Told(FileSystemEventHandler):
    def __init__(self) -> None:
        self.events: queue.SimpleQueue[str] = queue.SimpleQueue()

    def on_any_event(self, event: FileSystemEvent) -> None:
        if not event.is_directory:
            self.events.put(str(event.src_path))


def saves(*folders: Path) -> Iterator[None]:
    """Yield at once, and then after each change of a file below one of the folders.

    It looks rather than listens, as MkDocs does: that works on every file system. A change while
    the caller is busy is not missed.
    """
    told = _Told()
    observer = PollingObserver(timeout=LOOK)
    for folder in folders:
        observer.schedule(told, str(folder), recursive=True)
    observer.start()
    try:
        yield
        while True:
            told.events.get()
            _until_quiet(told.events)
            yield
    finally:
        observer.stop()
        observer.join()


def _until_quiet(events: queue.SimpleQueue[str]) -> None:
    while True:
        try:
            events.get(timeout=QUIET)
        except queue.Empty:
            return
