"""A failure is one sentence to the person who can put it right."""

from __future__ import annotations

import errno
import shutil
import tempfile
from pathlib import Path

AGAIN = "then run the same command again"

DISK_FULL = "the disk is full: free about 1 GB, " + AGAIN
READ_ONLY = "files cannot be written there: make the folder writable for you, " + AGAIN
NO_NETWORK = "the package registry cannot be reached: connect to the network, " + AGAIN

# Words in the output of pip, npm, uv and apt-get that tell a cause; the first cause that fits wins.
CAUSES = (
    (DISK_FULL, ("no space left on device", "enospc", "disk quota exceeded", "edquot")),
    (
        (
            "a download is not the locked one (its hash differs): try on another network, and if it "
            "stays so, make the lock file anew as build_tools/requirements/README.md says"
        ),
        ("do not match the hashes", "eintegrity", "hash mismatch"),
    ),
    (
        "the network's certificate is not trusted: make it known to this machine, " + AGAIN,
        ("certificate_verify_failed", "self-signed certificate", "self_signed_cert"),
    ),
    (
        NO_NETWORK,
        (
            "name resolution",
            "name or service not known",
            "getaddrinfo",
            "failed to resolve",
            "dns error",
            "could not resolve",
            "enotfound",
            "eai_again",
            "econnrefused",
            "econnreset",
            "etimedout",
            "network is unreachable",
            "enetunreach",
            "connection refused",
            "connection broken",
            "connection reset",
            "max retries exceeded",
            "timed out",
            "error sending request",
            "proxy",
        ),
    ),
    (READ_ONLY, ("read-only file system", "erofs", "permission denied", "eacces")),
)

ERRNO_CAUSES = {
    errno.ENOSPC: DISK_FULL,
    errno.EDQUOT: DISK_FULL,
    errno.EROFS: READ_ONLY,
    errno.EACCES: READ_ONLY,
    errno.EPERM: READ_ONLY,
}

# Less than this left is a full disk; the packages take about 300 MB.
LITTLE_SPACE = 100_000_000


class Failure(Exception):
    """Its text is the whole sentence."""

    def __init__(self, sentence: str, cause: str | None = None):
        super().__init__(sentence)
        self.cause = cause


def cause_in(output: str) -> str | None:
    """The cause that a program's output tells, if it is one we know."""
    lowered = output.lower()
    for cause, words in CAUSES:
        if any(word in lowered for word in words):
            return cause
    return None


def cause_of(output: str, folder: Path) -> str | None:
    """The cause of a program's failure; on a full disk its output may itself have been lost."""
    try:
        places = (str(folder), tempfile.gettempdir())
    except FileNotFoundError:  # no folder for temporary files takes one
        return DISK_FULL
    if any(shutil.disk_usage(place).free < LITTLE_SPACE for place in places):
        return DISK_FULL
    return cause_in(output)


def sentence_for(error: OSError) -> str:
    """What an error of the operating system means, for our own reading and writing."""
    cause = ERRNO_CAUSES.get(error.errno)
    if cause is None:
        return "{}: {}.".format(error.filename or "The system said", error.strerror or error)
    if cause is DISK_FULL or error.filename is None:  # a copy names the wrong one of its two files
        return f"Writing failed because {cause}."
    return f"Writing {error.filename} failed because {cause}."
