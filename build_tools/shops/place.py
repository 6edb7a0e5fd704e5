"""Where the handbook lies that a command works on: the shipped one, or that of `--shop FOLDER`."""

from __future__ import annotations

import os
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import click
from mkdocs.config import load_config
from mkdocs.exceptions import ConfigurationError

from build_tools.content.handbook import Handbook
from build_tools.set_up.failure import Failure
from build_tools.set_up.start import ROOT
from build_tools.shops.retold import load

CONFIG = "mkdocs.yml"
#: The variable by which the settings of a shop's site find those that they go on from.
SHIPPED = "SHIPPED_HANDBOOK"
#: The sources that shops draw on.
LIBRARY = ROOT / "docs_src"
_CHOSEN = "build_tools.shop"


@dataclass(frozen=True)
class Place:
    """The settings of a site, its sources, the folder that messages start from, and the library."""

    config: Path
    docs_folder: Path
    root: Path
    library: Path | None = None

    @property
    def watched(self) -> tuple[Path, ...]:
        """The folders whose files make the handbook."""
        return (self.docs_folder, *([self.library] if self.library else []))

    def load(self) -> Handbook:
        """Load the sources."""
        return load(self.docs_folder, self.root, self.library)

    def load_sound(self) -> Handbook:
        """Load the sources; fail where something in them cannot be read."""
        handbook = self.load()
        if handbook.problems:
            raise Failure("Some sources could not be read: the command check tells which.")
        return handbook


def place_of(shop: Path | None) -> Place:
    """Return the place of a shop, or the shipped one. Raises Failure for a folder without one."""
    root = ROOT if shop is None else shop.resolve()
    config = root / CONFIG
    if shop is not None:
        if not config.is_file():
            raise Failure(
                f"There is no shop in {root}: it has no {CONFIG} (the command new shop writes one)."
            )
        os.environ[SHIPPED] = str(ROOT / CONFIG)
    try:
        loaded = load_config(str(config))
    except ConfigurationError as error:
        raise Failure(f"{config} cannot be used: {error}") from error
    return Place(config, Path(loaded.docs_dir), root, library_of(loaded))


def library_of(config: Any) -> Path | None:
    """Return the sources that the site of a configuration draws on, if any."""
    plugin = config.plugins.get("handbook")
    return LIBRARY if plugin is not None and plugin.config.draws_on_library else None


def here() -> Place:
    """Return the place that the command at work was told by `--shop`."""
    context = click.get_current_context(silent=True)
    return place_of(context.find_root().meta.get(_CHOSEN) if context else None)


class ShopGroup(click.Group):
    """A group of commands that take `--shop FOLDER`, before the command's name or after it."""

    def __init__(self, *arguments: Any, **named: Any) -> None:
        super().__init__(*arguments, **named)
        self.params.append(_option())

    def add_command(self, cmd: click.Command, name: str | None = None) -> None:
        """Add a command, with the option; one that passes all it gets on has no options."""
        if not cmd.ignore_unknown_options:
            cmd.params.append(_option())
        super().add_command(cmd, name)


def _option() -> click.Option:
    return click.Option(
        ["--shop"],
        type=click.Path(path_type=Path, file_okay=False),
        metavar="FOLDER",
        expose_value=False,
        callback=_choose,
        help="Work on the handbook of the shop in this folder.",
    )


def _choose(context: click.Context, _: click.Parameter, folder: Path | None) -> None:
    if folder is not None:
        context.find_root().meta[_CHOSEN] = folder
