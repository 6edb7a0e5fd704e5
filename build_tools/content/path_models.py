"""The format of the paths: a few pages of the handbook, in the order to read them for a purpose."""

from __future__ import annotations

from pydantic import Field

from build_tools.content.fields import Format, Text, reference


class ReadingPath(Format):
    """One path of paths.yaml: the pages that a reader with one purpose takes, in their order."""

    title: Text = Field(description="the path in a few words")
    purpose: Text = Field(description="who reads it and what for, in a sentence")
    pages: list[reference("pages")] = Field(
        min_length=1, description="a list of pages in their order, such as [learn/salt-and-brine]"
    )
