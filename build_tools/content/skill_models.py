"""The format of the skills that a technician is signed off in."""

from __future__ import annotations

from pydantic import Field

from build_tools.content.fields import Format, Text, reference
from build_tools.content.page_models import Texts


class Skill(Format):
    """One skill of skills.yaml: what belongs to it, and what an observer must see."""

    title: Text = Field(description="the skill in a few words")
    procedures: list[reference("procedures")] = Field(
        min_length=1, description="a list of the procedures that belong to it"
    )
    seen: Texts = Field(description="a list of what an observer must see")
    faults: list[reference("fault groups")] = Field(
        min_length=1, description="a list of the groups of faults whose practice calls count"
    )
    heavy: bool = Field(
        False, description='"true" where the work is heavy and one observation is enough'
    )
