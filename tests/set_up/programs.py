"""Tiny programs that stand in for those a machine may have."""

from __future__ import annotations

from pathlib import Path


def put_program(path: Path, *lines: str) -> Path:
    """Write a shell script that can be run."""
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text("\n".join(("#!/bin/sh", *lines, "")))
    path.chmod(0o755)
    return path


def put_python(path: Path, version: str, *lacks: str) -> Path:
    """A program that answers as a Python of that version does when it is looked at."""
    answers = (str(path), version, *lacks)
    return put_program(path, *(f"echo {answer}" for answer in answers))
