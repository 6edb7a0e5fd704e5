"""What the output of the set-up's programs means, told by excerpts of their true output."""

from __future__ import annotations

import errno
import os
from pathlib import Path

import pytest

from build_tools.set_up.failure import (
    AGAIN,
    DISK_FULL,
    NO_NETWORK,
    READ_ONLY,
    cause_in,
    sentence_for,
)

OUTPUTS = {
    "pip, full disk": (
        "ERROR: Could not install packages due to an OSError: [Errno 28] No space left on device",
        DISK_FULL,
    ),
    "npm, full disk": ("npm error code ENOSPC\nnpm error syscall write", DISK_FULL),
    "pip, no name service": (
        (
            "WARNING: Retrying (Retry(total=0, connect=None)) after connection broken by "
            "'NewConnectionError: Failed to establish a new connection: [Errno -3] Temporary failure "
            "in name resolution': /simple/attrs/\n"
            "ERROR: No matching distribution found for attrs==26.1.0"
        ),
        NO_NETWORK,
    ),
    "npm, no name service": ("npm error code ENOTFOUND\nnpm error errno ENOTFOUND", NO_NETWORK),
    "uv, no name service": (
        "  cause: error sending request for url\n  cause: dns error",
        NO_NETWORK,
    ),
    "apt-get, no name service": ("E: Failed to fetch  Could not resolve 'deb'", NO_NETWORK),
    "pip, read-only folder": (
        "ERROR: Could not install packages due to an OSError: [Errno 30] Read-only file system",
        READ_ONLY,
    ),
    "npm, folder of another user": ("npm error code EACCES", READ_ONLY),
    "no known cause": ("ERROR: Failed building wheel for something", None),
}


@pytest.mark.parametrize("name", OUTPUTS)
def test_output_tells_the_cause(name: str) -> None:
    output, cause = OUTPUTS[name]
    assert cause_in(output) == cause


@pytest.mark.parametrize(
    "output",
    [
        "ERROR: THESE PACKAGES DO NOT MATCH THE HASHES FROM THE REQUIREMENTS FILE.",
        "npm error code EINTEGRITY\nnpm error sha512-aa integrity checksum failed",
    ],
)
def test_another_hash_is_told_as_such(output: str) -> None:
    assert "a download is not the locked one" in cause_in(output)


def test_a_full_disk_outweighs_what_follows_from_it() -> None:
    output = "No space left on device\nWARNING: connection broken by ..."
    assert cause_in(output) == DISK_FULL


def test_a_file_that_cannot_be_written_is_named() -> None:
    error = OSError(errno.EROFS, os.strerror(errno.EROFS), "/handbook/.cache")
    assert sentence_for(error) == (
        "Writing /handbook/.cache failed because files cannot be written there: make the folder "
        f"writable for you, {AGAIN}."
    )


def test_a_full_disk_names_no_file() -> None:
    """Copying reports the file it reads from, which is not the one that finds no room."""
    error = OSError(errno.ENOSPC, os.strerror(errno.ENOSPC), "/handbook/source.svg")
    assert sentence_for(error) == (
        f"Writing failed because the disk is full: free about 1 GB, {AGAIN}."
    )


def test_any_other_error_keeps_the_words_of_the_system(tmp_path: Path) -> None:
    with pytest.raises(OSError, match="No such file") as caught:
        (tmp_path / "absent").read_text()
    assert sentence_for(caught.value) == f"{tmp_path / 'absent'}: No such file or directory."
