"""The commands, as they run inside the environment: each hands over to the module that has it."""

from __future__ import annotations

import os
import sys
from pathlib import Path
from typing import Any

import click
from mkdocs.exceptions import BuildError

from build_tools.authoring import commands as authoring
from build_tools.authoring.new import Wanted
from build_tools.benchmarks import commands as benchmarks
from build_tools.building import commands as building
from build_tools.class_pack import commands as class_packs
from build_tools.class_pack.options import Several
from build_tools.comparing import commands as comparing
from build_tools.diagnosis import commands as diagnosing
from build_tools.language import commands as translating
from build_tools.printing import commands as printing
from build_tools.printing.wanted import Wanted as WantedPrint
from build_tools.publishing import commands as publishing
from build_tools.publishing import hash_list
from build_tools.serving import commands as serving
from build_tools.set_up.failure import Failure, sentence_for
from build_tools.set_up.start import COMMANDS, ROOT, hand_over
from build_tools.shops.commands import NewCommand
from build_tools.shops.place import ShopGroup, here
from build_tools.work_out import commands as working_out


@click.group(cls=ShopGroup)
def main() -> None:
    """Build, check, show and test the handbook."""


@main.command(help=COMMANDS["serve"])
@serving.options_of_serve
def serve(port: int) -> None:
    """Show the handbook on this machine only."""
    serving.serve(here(), port)


@main.command(help=COMMANDS["build"])
@building.options_of_build
def build(output: Path | None, compared_with: str | None) -> None:
    """Write the site."""
    building.build(here(), output, compared_with)


@main.command(help=COMMANDS["check"])
@authoring.options_of_check
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
@working_out.options_of_work_out
def work_out(name: str | None, **options: Any) -> None:
    """List the calculators, or work one out."""
    if name is None:
        working_out.list_calculators()
    else:
        working_out.work_out(here(), name, **options)


@main.command("compare", help=COMMANDS["compare"])
@comparing.options_of_compare
def compare(old: str, new: str | None, how: str) -> None:
    """Tell which numbers and texts differ between two editions, and why."""
    comparing.compare(here().root, old, new, how)


@main.command("simulate-homes", help=COMMANDS["simulate-homes"])
@diagnosing.options_of_simulate_homes
def simulate_homes(faults: tuple[str, ...]) -> None:
    """Make stale homes anew, or those of the named faults."""
    diagnosing.simulate_homes(here(), faults)


@main.command("class-pack", cls=Several, help=COMMANDS["class-pack"])
@class_packs.options_of_class_pack
def class_pack(**options: Any) -> None:
    """Write question sheets with their key, and files for learning systems."""
    class_packs.write_class_pack(here(), **options)


@main.command("print", help=COMMANDS["print"])
@printing.options_of_print
def print_handbook(
    kind: str, name: str, people: tuple[str, ...], language: str, **options: Any
) -> None:
    """Print the handbook, or a part of it, into a PDF file."""
    printing.print_into_file(here(), WantedPrint(kind, name, people, language), **options)


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
@benchmarks.options_of_benchmark
def benchmark(subject: str, as_json: bool, rounds: int, **of_diagnosis: Any) -> None:
    """Measure on this machine, side by side."""
    if subject == benchmarks.DIAGNOSIS:
        benchmarks.benchmark_diagnosis(here(), **of_diagnosis, as_json=as_json)
    else:
        benchmarks.benchmark(ROOT, subject, rounds, as_json)


@main.command("readme-pictures", help=COMMANDS["readme-pictures"])
def readme_pictures() -> None:
    """Take the pictures of the README anew."""
    from build_tools.readme_pictures import renew_pictures

    for file in renew_pictures(here(), ROOT / "docs" / "pictures"):
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
