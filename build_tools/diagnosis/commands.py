"""The command simulate-homes."""

from __future__ import annotations

from collections.abc import Callable

import click

from build_tools.content.problems import expected
from build_tools.set_up.failure import Failure
from build_tools.shops.place import Place


def options_of_simulate_homes(command: Callable[..., None]) -> Callable[..., None]:
    """Give a command the arguments of `simulate-homes`."""
    return click.argument("faults", nargs=-1, metavar="[FAULT]...")(command)


def simulate_homes(place: Place, faults: tuple[str, ...]) -> None:
    """Make stale homes anew, or those of the named faults; the rest stays as it is."""
    from build_tools.content.diagnosis_data import diagnosis_data
    from build_tools.diagnosis import simulated_homes as homes
    from build_tools.diagnosis.knowledge_data import kept_homes, shipped_homes

    handbook = place.load_sound()
    data = diagnosis_data(handbook)
    for name in faults:
        if name not in data["faults"]:
            raise Failure(f'There is no fault "{name}" {expected(name, data["faults"])}.')
    try:
        kept = kept_homes(handbook)
    except ValueError:  # the file is no JSON: all homes are made anew
        kept = {}
    names = [one for one in homes.simulated(data) if set(one.split("+")) & set(faults)]
    names = names if faults else homes.stale(data, kept)
    made = homes.make(data, names, kept, lambda line: click.echo(line, err=True))
    text = homes.as_text(homes.without(made, shipped_homes(handbook)))
    (handbook.docs_folder / homes.FILE).write_text(text, "utf-8", newline="\n")
    click.echo(f"Homes made anew: {len(names)}. All homes: {len(made['faults'])}.")
