"""The command serve."""

from __future__ import annotations

import errno
import os
import signal
import socket
from collections.abc import Callable

import click

from build_tools.building.with_mkdocs import print_what_mkdocs_says
from build_tools.set_up.failure import Failure
from build_tools.shops.place import Place

LOOPBACK = "127.0.0.1"


def options_of_serve(command: Callable[..., None]) -> Callable[..., None]:
    """Give a command the options of `serve`."""
    return click.option("--port", default=8000, show_default=True, type=click.IntRange(1, 65535))(
        command
    )


def serve(place: Place, port: int) -> None:
    """Show the handbook on this machine only, until Ctrl+C."""
    from build_tools.serving import server

    signal.signal(signal.SIGTERM, signal.default_int_handler)
    _make_sure_port_is_free(port)
    print_what_mkdocs_says("mkdocs.livereload")
    click.echo(f"Building the handbook for http://{LOOPBACK}:{port}/ (Ctrl+C stops it) ...")
    try:
        server.serve(place.config, LOOPBACK, port)
    except OSError as error:
        if error.errno == errno.EADDRINUSE:
            raise Failure(_taken(port)) from error
        raise


def _make_sure_port_is_free(port: int) -> None:
    """Fail before the build, not after it."""
    with socket.socket() as probe:
        if os.name != "nt":
            probe.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            probe.bind((LOOPBACK, port))
        except PermissionError:
            raise Failure(
                f"This machine keeps port {port} for its administrator: choose one from 1024 up, "
                "such as --port 8000."
            ) from None
        except OSError:
            raise Failure(_taken(port)) from None


def _taken(port: int) -> str:
    """The sentence for a port that another program listens on."""
    other = port + 1 if port < 65535 else 8000
    return f"Port {port} is taken by another program: stop that one, or add --port {other}."
