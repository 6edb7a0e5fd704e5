"""What was asked to be printed, and what is wrong with that."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from build_tools.content.problems import expected
from build_tools.language.languages import ENGLISH
from build_tools.set_up.failure import Failure

#: What can be printed.
KINDS = ("handbook", "path", "pocket-sheet", "sign-off")
#: The sizes of paper, as the command and styles name them.
PAPERS = ("a4", "letter")
#: A longer name of a person does not fit on its line.
LONGEST_NAME = 60


@dataclass(frozen=True)
class Wanted:
    """One print. name: that of a path; people: for whom sign-off sheets are.

    language: that of a path's pages.
    """

    kind: str
    name: str = ""
    people: tuple[str, ...] = ()
    language: str = ENGLISH

    def __post_init__(self) -> None:
        if self.kind not in KINDS:
            raise Failure(f'There is no print "{self.kind}" {expected(self.kind, KINDS)}.')
        if self.name and self.kind != "path":
            raise Failure(f"“{self.name}” is one word too many: only a path is named.")
        if self.people and self.kind != "sign-off":
            raise Failure("Only sign-off sheets are for a person: leave --person out.")
        if self.language != ENGLISH and self.kind != "path":
            raise Failure("Only a path is printed in another language: leave --language out.")
        for person in self.people:
            if not person.strip() or len(person) > LONGEST_NAME or not person.isprintable():
                raise Failure(f"The name of a person has 1 to {LONGEST_NAME} letters on one line.")

    @property
    def file_name(self) -> str:
        """What its file is called where nobody says."""
        parts = [self.kind, self.name, self.language if self.language != ENGLISH else ""]
        return f"{'-'.join(filter(None, parts))}.pdf"


def checked_output(output: Path) -> Path:
    """Return where a file can be written. Raises Failure for a folder, or one in no folder."""
    if output.is_dir():
        raise Failure(f"{output} is a folder: name a file, such as {output / 'handbook.pdf'}.")
    if not output.parent.is_dir():
        raise Failure(f"There is no folder {output.parent} to write {output.name} into.")
    return output
