"""The commands, as they run inside the environment."""

from __future__ import annotations

import errno
import json
import logging
import os
import shutil
import signal
import socket
import sys
import tempfile
from pathlib import Path
from typing import Any

import click
from mkdocs.commands import build as mkdocs_build
from mkdocs.config import load_config
from mkdocs.exceptions import BuildError

from build_tools.authoring import commands as authoring
from build_tools.authoring.new import Wanted
from build_tools.authoring.reports import FORMATS
from build_tools.browser import BrowserFilesError
from build_tools.browser.compressed import brotli_twin, is_compressed
from build_tools.browser.runtime import compressed_files, runtime_files
from build_tools.class_pack.options import MOST_PEOPLE, Several, checked
from build_tools.comparing import commands as comparing
from build_tools.content.handbook import Handbook
from build_tools.content.problems import expected
from build_tools.language import commands as translating
from build_tools.printing import commands as printing
from build_tools.printing.wanted import Wanted as WantedPrint
from build_tools.publishing import commands as publishing
from build_tools.publishing import hash_list
from build_tools.set_up.failure import Failure, sentence_for
from build_tools.set_up.start import COMMANDS, ROOT, hand_over
from build_tools.shops.commands import NewCommand
from build_tools.shops.place import ShopGroup, here
from calculators import CALCULATORS
from calculators.quantities import SYSTEMS

LOOPBACK = "127.0.0.1"

# Every folder of a built site has these; one that has not is never emptied for a new site.
SIGNS_OF_A_SITE = ("404.html", "sitemap.xml")


@click.group(cls=ShopGroup)
def main() -> None:
    """Build, check, show and test the handbook."""


@main.command(help=COMMANDS["serve"])
@click.option("--port", default=8000, show_default=True, type=click.IntRange(1, 65535))
def serve(port: int) -> None:
    """Show the handbook on this machine only."""
    from build_tools.serving import server

    signal.signal(signal.SIGTERM, signal.default_int_handler)
    make_sure_port_is_free(port)
    print_what_mkdocs_says("mkdocs.livereload")
    click.echo(f"Building the handbook for http://{LOOPBACK}:{port}/ (Ctrl+C stops it) ...")
    try:
        server.serve(here().config, LOOPBACK, port)
    except OSError as error:
        if error.errno == errno.EADDRINUSE:
            raise Failure(taken(port)) from error
        raise


@main.command(help=COMMANDS["build"])
@click.option(
    "--output",
    type=click.Path(path_type=Path, file_okay=False, resolve_path=True),
    help="The folder to write, in the place of site.",
)
@click.option(
    "--compared-with",
    metavar="OLD",
    help="Add a page on what changed since a revision, or since the edition in a folder.",
)
def build(output: Path | None, compared_with: str | None) -> None:
    """Write the site."""
    output = output or here().root / "site"
    if output.exists() and any(output.iterdir()) and not is_site(output):
        raise Failure(
            f"The folder {output} holds something other than a built handbook, and a build empties "
            "its folder: name a new or an empty one."
        )
    print_what_mkdocs_says()
    write_site(output, compared_with and comparing.record_of_side(compared_with, here().root))
    compress(output)
    hash_list.write_list(output)
    click.echo(f"The handbook is in {output}")


@main.command(help=COMMANDS["check"])
@click.option(
    "--format",
    "how",
    type=click.Choice([*FORMATS]),
    default="lines",
    show_default=True,
    help="For people, as one JSON object a line, or as one SARIF log.",
)
@click.option("--watch", is_flag=True, help="Check again after each saved file; Ctrl+C ends it.")
def check(how: str, watch: bool) -> None:
    """Tell every problem, or that there is none."""
    (authoring.check_and_watch if watch else authoring.check)(here(), how)


@main.command("new", cls=NewCommand, help=COMMANDS["new"])
@authoring.options_of_new
def new(kind: str, title: str, name: str, calculate: str, page: str) -> None:
    """Write a source that explains itself, and tell what is next."""
    authoring.make_new(here(), Wanted(kind, title, name, calculate, page))


@main.command("update-answers", help=COMMANDS["update-answers"])
def update_answers() -> None:
    """Rewrite what worked examples state, where it is no longer what comes out."""
    authoring.update_answers(here())


@main.command("schemas", help=COMMANDS["schemas"])
def schemas() -> None:
    """Make the schemas anew that are stale."""
    authoring.renew_schemas(ROOT)


@main.command("translations", help=COMMANDS["translations"])
@translating.options
def translations(strict: bool, words: bool, begin: str, compared: str) -> None:
    """List how far the other languages are, or write for translators."""
    translating.translations(here().load(), strict, words, begin, compared)


@main.command("work-out", help=COMMANDS["work-out"])
@click.argument("name", required=False)
@click.argument("inputs", nargs=-1, metavar="[INPUT=VALUE]...")
@click.option("--unit", help="The id of a unit of equipment that fills in its figures.")
@click.option("--units", type=click.Choice(SYSTEMS), help="In place of the shop's own.")
@click.option("--json", "as_json", is_flag=True, help="The plain structure that pages get.")
def work_out(
    name: str | None,
    inputs: tuple[str, ...],
    unit: str | None,
    units: str | None,
    as_json: bool,
) -> None:
    """List the calculators, or work one out with the shop's values for what is not given."""
    from build_tools import terminal
    from build_tools.content.values import Values

    if name is None:
        click.echo(terminal.listed())
        return
    handbook = here().load()
    if handbook.shop is None:
        raise Failure("shop.yaml could not be read: the command check tells why.")
    units = units or handbook.units
    calculator = terminal.find(name, CALCULATORS, "calculator")
    values = Values(handbook)
    defaults = values.shop.defaults(calculator)
    if unit:
        equipment = terminal.find(unit, handbook.equipment, "unit of equipment")
        defaults |= values.figures.inputs(equipment, calculator)
    result = terminal.worked_out(calculator, inputs, defaults, units)
    if as_json:
        click.echo(json.dumps(result, ensure_ascii=False, indent=2))
    elif not result["problems"]:
        click.echo(terminal.answer(calculator, result))
    if result["problems"]:
        told = terminal.problems_told(result["problems"])
        raise Failure(f"{told}\n\n{terminal.inputs_listed(calculator, units)}")


@main.command("compare", help=COMMANDS["compare"])
@comparing.options_of_compare
def compare(old: str, new: str | None, how: str) -> None:
    """Tell which numbers and texts differ between two editions, and why."""
    comparing.compare(here().root, old, new, how)


@main.command("simulate-homes", help=COMMANDS["simulate-homes"])
@click.argument("faults", nargs=-1, metavar="[FAULT]...")
def simulate_homes(faults: tuple[str, ...]) -> None:
    """Make stale homes anew, or those of the named faults; the rest stays as it is."""
    from build_tools.content.diagnosis_data import diagnosis_data
    from build_tools.diagnosis import simulated_homes as homes
    from build_tools.diagnosis.knowledge_data import kept_homes, shipped_homes

    handbook = sound_handbook()
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


@main.command("class-pack", cls=Several, help=COMMANDS["class-pack"])
@click.option("--seed", required=True, help="A number: the same one gives the same pack.")
@click.option(
    "--output",
    required=True,
    type=click.Path(path_type=Path, resolve_path=True),
    help="The folder to write, new or empty, or one with an older pack.",
)
@click.option("--exercises", multiple=True, metavar="ID...", help="These exercises.")
@click.option("--family", multiple=True, metavar="FAMILY...", help="All exercises of families.")
@click.option("--calls", multiple=True, metavar="CODE...", help="These practice calls.")
@click.option(
    "--people",
    default=1,
    show_default=True,
    type=click.IntRange(1, MOST_PEOPLE),
    help="So many sheets, each with numbers and a key of its own.",
)
@click.option("--edition", default="", help='The day that each page bears, such as "2026-05-01".')
@click.option("--units", type=click.Choice(SYSTEMS), help="In place of the shop's own.")
@click.option("--address", help="Where the handbook's site is, for links to its calculators.")
@click.option("--no-pdf", is_flag=True, help="Make no PDF files.")
def class_pack(
    seed: str,
    output: Path,
    exercises: tuple[str, ...],
    family: tuple[str, ...],
    calls: tuple[str, ...],
    people: int,
    edition: str,
    units: str | None,
    address: str | None,
    no_pdf: bool,
) -> None:
    """Write question sheets with their key, and files for learning systems."""
    from build_tools.class_pack.pack import Pack, Wanted, write
    from build_tools.set_up import browser

    address = address or load_config(str(here().config)).site_url or ""
    checked(seed, edition, address)
    wanted = Wanted(
        seed,
        people=people,
        exercises=exercises,
        families=family,
        calls=calls,
        units=units or "",
        edition=edition,
        address=address,
    )
    at_hand = None if no_pdf else browser.find(ROOT)
    names = write(Pack(sound_handbook(), wanted), output, at_hand, click.echo)
    click.echo(f"Written into {output}: {', '.join(names)}.")


@main.command("print", help=COMMANDS["print"])
@printing.options_of_print
def print_handbook(
    kind: str,
    name: str,
    output: Path | None,
    paper: str | None,
    people: tuple[str, ...],
    language: str,
    site: Path | None,
) -> None:
    """Print the handbook, or a part of it, into a PDF file."""
    wanted = WantedPrint(kind, name, people, language)
    print_what_mkdocs_says()
    printing.print_into_file(
        wanted, sound_handbook, write_site, ROOT, site=site, output=output, paper=paper
    )


@main.command("check-copy", help=COMMANDS["check-copy"])
@publishing.options_of_check_copy
def check_copy(copy: str, list_file: Path | None) -> None:
    """Compare a published copy with the list of a build."""
    publishing.check_copy(copy, list_file or here().root / "site" / hash_list.NAME)


@main.command("container", help=COMMANDS["container"])
@publishing.options_of_container
def container(output: Path) -> None:
    """Write what a container is made from, around the built site."""
    publishing.write_container(here().root / "site", output)


@main.command("benchmark", help=COMMANDS["benchmark"])
@click.argument(
    "subject",
    type=click.Choice(["calculators", "first-answer", "build", "simulation", "diagnosis"]),
)
@click.option("--json", "as_json", is_flag=True, help="What was measured, as JSON.")
@click.option(
    "--rounds",
    default=5,
    show_default=True,
    type=click.IntRange(1),
    help="Of first-answer and build: how often to measure; the medians are told.",
)
@click.option(
    "--calls",
    default=3000,
    show_default=True,
    type=click.IntRange(1),
    help="Of diagnosis: how many hidden faults to look for.",
)
@click.option(
    "--seed", default=1, show_default=True, type=int, help="Of diagnosis: which calls to draw."
)
@click.option(
    "--keep", is_flag=True, help="Of diagnosis: write the figures that the trainers' page shows."
)
def benchmark(subject: str, as_json: bool, rounds: int, calls: int, seed: int, keep: bool) -> None:
    """Measure on this machine, side by side."""
    if subject == "diagnosis":
        from build_tools.benchmarks.diagnosis.measure import measure
        from build_tools.benchmarks.diagnosis.table import table as table_of_diagnosis
        from build_tools.diagnosis import measured
        from build_tools.diagnosis.knowledge_data import knowledge_data

        handbook = sound_handbook()
        found = measure(knowledge_data(handbook), calls, seed)
        if keep:
            measured.keep(handbook.docs_folder, found)
        click.echo(json.dumps(found, indent=2) if as_json else table_of_diagnosis(found))
        return
    if subject in ("first-answer", "build"):
        from build_tools.benchmarks import build, first_answer
        from build_tools.benchmarks.table import table

        if subject == "build":
            measured = list(build.measure(rounds))
        else:
            measured = first_answer.measure(ROOT, rounds)
        data = [row.as_data() for row in measured]
        click.echo(json.dumps(data, indent=2) if as_json else table(measured))
        return
    from build_tools.benchmarks import calculators, simulation

    measured_by = simulation if subject == "simulation" else calculators
    rows = measured_by.measure(ROOT)
    click.echo(json.dumps(rows, indent=2) if as_json else measured_by.table(rows))


@main.command("readme-pictures", help=COMMANDS["readme-pictures"])
def readme_pictures() -> None:
    """Build the handbook into a folder of its own, and take pictures of it."""
    from build_tools.readme_pictures import take_pictures

    print_what_mkdocs_says()
    with tempfile.TemporaryDirectory() as folder:
        write_site(Path(folder) / "site")
        for file in take_pictures(Path(folder) / "site", ROOT / "docs" / "pictures"):
            click.echo(f"Written: {file.relative_to(ROOT)}")


@main.command(
    help=COMMANDS["test"],
    context_settings={"ignore_unknown_options": True, "help_option_names": []},
)
@click.argument("pytest_arguments", nargs=-1, type=click.UNPROCESSED)
def test(pytest_arguments: tuple[str, ...]) -> None:
    """Give way to pytest, which runs files of tests side by side."""
    os.chdir(ROOT)
    # In their order: those in browsers come early, and the quick ones fill the end.
    in_order = ["--dist=loadfile", "--no-loadscope-reorder"]
    side_by_side = ["--numprocesses=auto", "--maxprocesses=4", *in_order]
    sys.exit(hand_over([sys.executable, "-m", "pytest", *side_by_side, *pytest_arguments]))


def write_site(output: Path, compared_with: dict[str, Any] | None = None) -> None:
    """Build the handbook into a folder, which is emptied first.

    compared_with: the record of an older edition: a page then tells what changed since.
    """
    config = load_config(str(here().config), strict=True, site_dir=str(output))
    config.plugins.on_startup(command="build", dirty=False)
    config.plugins["handbook"].compared_with = compared_with
    try:
        mkdocs_build.build(config)
    finally:
        config.plugins.on_shutdown()


def sound_handbook() -> Handbook:
    """Load the handbook; fail where something in it cannot be read."""
    handbook = here().load()
    if handbook.problems:
        raise Failure("Some sources could not be read: the command check tells which.")
    return handbook


def make_sure_port_is_free(port: int) -> None:
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
            raise Failure(taken(port)) from None


def taken(port: int) -> str:
    """The sentence for a port that another program listens on."""
    other = port + 1 if port < 65535 else 8000
    return f"Port {port} is taken by another program: stop that one, or add --port {other}."


def compress(site: Path) -> None:
    """Put a brotli twin beside each large file of the runtime, for hosts that can serve it."""
    runtime = runtime_files(ROOT)
    cache = compressed_files(ROOT)
    if not all(is_compressed(path, cache) for path in runtime.compressible.values()):
        click.echo("Compressing the browser's Python (half a minute, once) ...", err=True)
    try:
        for address, path in runtime.compressible.items():
            shutil.copy(brotli_twin(path, cache), site / f"{address}.br")
    except BrowserFilesError as error:
        raise Failure(str(error)) from error


def is_site(folder: Path) -> bool:
    """Whether a folder holds a site that an earlier build wrote."""
    return all((folder / name).is_file() for name in SIGNS_OF_A_SITE)


def print_what_mkdocs_says(progress_of: str | None = None) -> None:
    """Warnings and errors of MkDocs go to stderr as they are, and one part's progress too."""
    handler = logging.StreamHandler()
    handler.setFormatter(logging.Formatter("%(message)s"))
    logging.getLogger("mkdocs").addHandler(handler)
    logging.getLogger("mkdocs").setLevel(logging.WARNING)
    if progress_of:
        logging.getLogger(progress_of).setLevel(logging.INFO)


def run(arguments: list[str]) -> int:
    """Run a command; each failure is its sentence on stderr and exit code 1.

    A command that has told its failure itself ends with its exit code.
    """
    try:
        code = main(arguments, prog_name="python3 -m build_tools", standalone_mode=False)
    except click.Abort:
        print("Stopped.", file=sys.stderr)
        return 130
    except click.ClickException as error:  # of MkDocs too
        if not isinstance(error.__context__, BuildError):  # else it is in the log already
            print(error.format_message(), file=sys.stderr)
        return 1
    except Failure as failure:
        print(failure, file=sys.stderr)
        return 1
    except OSError as error:
        print(sentence_for(error), file=sys.stderr)
        return 1
    return code or 0


if __name__ == "__main__":
    sys.exit(run(sys.argv[1:]))
