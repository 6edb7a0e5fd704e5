"""The quota that makes a processor slow for one program."""

from __future__ import annotations

import subprocess
from pathlib import Path

import pytest

from build_tools.benchmarks.slow_processor import PERIOD_US, quota


def test_a_program_is_started_within_the_quota(tmp_path: Path) -> None:
    with quota() as group:
        if group is None:
            pytest.skip("a quota needs root, and Linux's control groups")
        launcher = group.launcher("/bin/cat", tmp_path / "slow-cat")
        group.limit(0.25)
        told = subprocess.run(
            [launcher, "/proc/self/cgroup"], capture_output=True, text=True, check=True
        )
        assert f"/{group.folder.name}\n" in told.stdout
        files = ("cpu.max", "cpu.cfs_quota_us")
        (quota_file,) = (group.folder / name for name in files if (group.folder / name).exists())
        assert quota_file.read_text().split()[0] == str(PERIOD_US // 4)
        group.limit(None)
        assert quota_file.read_text().split()[0] in ("max", "-1")
    assert not group.folder.exists()
