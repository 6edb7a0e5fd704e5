"""Compares a copy at an address with a list: what is sent, and the headers it is sent with.

Files are asked for several at a time, without compression; a host that compresses all the same is
understood where it uses gzip. Pages are asked for by their folder, as readers do.
"""

from __future__ import annotations

import hashlib
import http.client
import zlib
from collections import Counter
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from email.message import Message
from urllib.error import HTTPError, URLError
from urllib.parse import quote, urlsplit
from urllib.request import Request, urlopen

from build_tools.pages import headers
from build_tools.publishing.findings import Findings
from build_tools.publishing.media_types import MEDIA_TYPES
from build_tools.set_up.failure import Failure

AT_ONCE, PATIENCE, TRIES = 8, 30, 2
#: Hosts that read it keep it to themselves; others send it or not.
NOT_ASKED_FOR = (headers.NAME,)
_NOWHERE = "no-such-page-in-this-handbook/"
_PIECE = 1 << 16


@dataclass(frozen=True)
class _Answer:
    """What came for one file: its hash or a problem, the headers, where it came from at last.

    Of a body that was sent packed there are two hashes: hosts also call a file packed that is so
    by itself, as the twins are that a build makes.
    """

    name: str
    hashes: tuple[str, ...] = ()
    problem: str = ""
    headers: Message | None = None
    came_from: str = ""


def compare(address: str, listed: dict[str, str], rules: dict[str, dict[str, str]]) -> Findings:
    """Return every missing and altered file of a copy, and warnings about its headers.

    rules: what the build wants to be sent with each path; {} where that is not known. Raises
    Failure where nothing answers at all.
    """
    base = address.rstrip("/") + "/"
    _make_sure_it_answers(base)
    names = [name for name in listed if name not in NOT_ASKED_FOR]
    with ThreadPoolExecutor(AT_ONCE) as pool:
        answers = list(pool.map(lambda name: _ask(base, name), names))
    found = Findings()
    for one in answers:
        if one.problem:
            found.problems.append(f"{one.name}: {one.problem}")
        elif listed[one.name] not in one.hashes:
            found.problems.append(f"{one.name}: altered")
    arrived = [one for one in answers if one.headers is not None]
    found.warnings += [
        *_redirects(base, arrived),
        *_media_types(arrived),
        *(_other_headers(arrived, rules) if rules else [_UNKNOWN]),
        *_wrong_address(base),
    ]
    return found


_UNKNOWN = f'no file "{headers.NAME}" stands beside the list, so headers were not compared'


def _make_sure_it_answers(base: str) -> None:
    try:
        with urlopen(Request(base), timeout=PATIENCE):
            return
    except HTTPError as error:
        error.close()
    except (URLError, http.client.HTTPException, OSError, ValueError) as error:
        reason = getattr(error, "reason", None) or error
        raise Failure(f"Nothing answers at {base}: {reason}.") from None


def _ask(base: str, name: str) -> _Answer:
    """Fetch a file; a connection that fails is tried once more."""
    address = base + quote(name.removesuffix("index.html") if _is_index(name) else name)
    problem = ""
    for _ in range(TRIES):
        try:
            request = Request(address, headers={"Accept-Encoding": "identity"})
            with urlopen(request, timeout=PATIENCE) as answer:
                return _read(name, answer)
        except HTTPError as error:
            error.close()
            if error.code in (404, 410):
                return _Answer(name, problem="missing")
            problem = f"not sent (the host answers {error.code} {error.reason})"
            if error.code < 500:
                break
        except TimeoutError:
            problem = f"not sent within {PATIENCE} seconds"
        except (URLError, http.client.HTTPException, OSError, zlib.error) as error:
            problem = f"cut off on the way ({getattr(error, 'reason', None) or error})"
    return _Answer(name, problem=problem)


def _read(name: str, answer: http.client.HTTPResponse) -> _Answer:
    coding = answer.headers.get("Content-Encoding", "identity").lower()
    if coding not in ("identity", "gzip"):
        problem = f'not comparable: sent with the compression "{coding}", which was not asked for'
        return _Answer(name, problem=problem)
    sent, content = hashlib.sha256(), hashlib.sha256()
    unpacked = zlib.decompressobj(16 + zlib.MAX_WBITS) if coding == "gzip" else None
    while piece := answer.read(_PIECE):
        sent.update(piece)
        if unpacked:
            content.update(unpacked.decompress(piece))
    if answer.length or (unpacked and not unpacked.eof):
        raise http.client.IncompleteRead(b"", answer.length)
    hashes = (sent.hexdigest(), content.hexdigest()) if unpacked else (sent.hexdigest(),)
    return _Answer(name, hashes, headers=answer.headers, came_from=answer.url)


def _is_index(name: str) -> bool:
    return name.rsplit("/", 1)[-1] == "index.html"


def _redirects(base: str, answers: list[_Answer]) -> Iterator[str]:
    others = {urlsplit(one.came_from).netloc for one in answers} - {urlsplit(base).netloc}
    for host in sorted(others):
        yield f"files come from another host, {host}: the policy lets pages load none from there"


def _media_types(answers: list[_Answer]) -> Iterator[str]:
    seen: Counter[tuple[str, str]] = Counter()
    for one in answers:
        ending = f".{one.name.rsplit('.', 1)[-1]}"
        sent = one.headers.get_content_type() if one.headers.get("Content-Type") else "none"
        if ending in MEDIA_TYPES and sent not in MEDIA_TYPES[ending]:
            seen[ending, sent] += 1
    for (ending, sent), number in seen.items():
        wanted = MEDIA_TYPES[ending][0]
        yield f'{_files(number, ending)} sent with the media type "{sent}" (expected "{wanted}")'


def _other_headers(answers: list[_Answer], rules: dict[str, dict[str, str]]) -> Iterator[str]:
    """Yield one warning for each header and wrong value, with one file that gets it."""
    seen: dict[tuple[str, str, str], list[str]] = {}
    root = headers.root_of(rules)
    for one in answers:
        path = root + (one.name.removesuffix("index.html") if _is_index(one.name) else one.name)
        for name, wanted in headers.headers_for(rules, path).items():
            sent = ", ".join(one.headers.get_all(name, ["nothing"]))
            if _plain(sent) != _plain(wanted):
                seen.setdefault((name, sent, wanted), []).append(one.name)
    for (name, sent, wanted), names in seen.items():
        number = _files(len(names))
        yield f'{name}: {number} sent with "{sent}" (expected "{wanted}"), such as {names[0]}'


def _wrong_address(base: str) -> Iterator[str]:
    try:
        with urlopen(Request(base + _NOWHERE), timeout=PATIENCE) as answer:
            yield f"an address without a page is answered with {answer.status} (expected 404)"
    except HTTPError as error:
        error.close()
        if error.code != 404:
            yield f"an address without a page is answered with {error.code} (expected 404)"
    except OSError:
        yield "an address without a page is not answered (expected 404)"


def _files(number: int, ending: str = "") -> str:
    kind = f" {ending}" if ending else ""
    return f"1{kind} file is" if number == 1 else f"{number}{kind} files are"


def _plain(value: str) -> str:
    return "".join(value.split())
