"""The formats of what the whole shop shares: the shop, facts, sources, cautions, equipment.

These models are the one definition of the formats. A description says what a key holds, in the
words in which a message asks for a missing one.
"""

from __future__ import annotations

from typing import Literal, Self

from pydantic import Field, model_validator

from build_tools.content.fields import (
    Format,
    Measure,
    Name,
    Plain,
    Price,
    PriceOrNothing,
    Text,
    Whole,
    either,
    measure,
    reference,
)

Control = Literal["time clock", "delayed meter", "immediate meter", "twin tank"]

AnyQuantity = measure()
Allowance = measure("allowance")
Flow = measure("flow")
Hardness = measure("hardness")
Concentration = measure("concentration")
FlowCoefficient = measure("flow coefficient")
Length = measure("length")
Mass = measure("mass")
Pressure = measure("pressure")
Share = measure("share")
Time = measure("time")
Voltage = measure("voltage")
Volume = measure("volume")


class TypicalHome(Format):
    """The home that the handbook's general examples are about."""

    people: Whole = Field(description="how many people live in the typical home")
    hardness: Hardness = Field(description='its raw hardness, such as "18 gpg"')
    iron: Concentration = Field(description='its dissolved iron, such as "0.5 mg/L"')


class TestKit(Format):
    """A test kit the shop's technicians carry."""

    __test__ = False  # its name begins like a test's, so pytest would look into it

    name: Text = Field(description="what the kit is called")
    measures: Text = Field(description="what it measures")
    step: AnyQuantity = Field(description='its smallest step, such as "1 gpg"')


class PocketSheet(Format):
    """What stands on the sheet that technicians carry: one side each."""

    procedure: reference("procedures") = Field(description="the procedure in short, side one")
    check: reference("checks") = Field(description="the check whose results stand on side two")
    tables: list[reference("tables")] = Field(description="a list of tables, side two")


class LocalCaution(Format):
    """What a standing caution comes to where the shop works."""

    caution: reference("cautions") = Field(description="the name of a caution")
    local: Text = Field(description="who is licensed here, or which code says more")


class Shop(Format):
    """shop.yaml: what differs from shop to shop."""

    name: Plain = Field(description="the shop's name")
    town: Plain = Field(description="the town it works in")
    region: Text = Field(description="a sentence about the region and its water")
    units: Literal["us", "metric"] = Field(description='the units readers see: "us" or "metric"')
    typical_home: TypicalHome = Field(description="people, hardness and iron of a typical home")
    iron_allowance: Allowance = Field(description='such as "4 gpg per mg/L"')
    manganese_allowance: Allowance = Field(description='such as "4 gpg per mg/L"')
    water_per_person: Flow = Field(description='water a person uses, such as "60 gal/day"')
    hot_share: Share = Field(description='the share of it that is hot, such as "35 %"')
    test_kits: list[TestKit] = Field(description="a list of test kits")
    currency: Plain = Field(description='the sign before a price, such as "$"')
    salt_bag: Mass = Field(description='what a bag of salt weighs, such as "40 lb"')
    salt_bag_price: Price = Field(description="what a bag costs, a number")
    water_price: Price = Field(description="what water costs, a number")
    sewer_price: PriceOrNothing = Field(description="what sewer costs for it too, 0 for none")
    water_price_volume: Volume = Field(description='the water they are for, such as "1000 gal"')
    equipment: list[reference("equipment")] = Field(
        min_length=1, description="a list of the equipment the shop carries"
    )
    pocket_sheet: PocketSheet | None = Field(
        None, description="what stands on the pocket sheet; missing: there is none"
    )
    local_cautions: list[LocalCaution] = Field(
        [], description="a list of what local rules add to a caution"
    )
    replaces: list[Name] = Field(
        [], description='a list of what of the library is replaced, such as "facts/bucket"'
    )
    left_out: list[Name] = Field(
        [], description='a list of what of the library is left out, such as "tables/setting"'
    )


class Fact(Format):
    """One fact of facts.yaml: a quantity the handbook may print, and why it may."""

    model_config = either("value", "low high")

    what: Text = Field(alias="is", description="what the fact is, in words")
    value: AnyQuantity | None = Field(None, description='such as "140 °F"')
    low: AnyQuantity | None = Field(None, description='the low end of a range, such as "15 min"')
    high: AnyQuantity | None = Field(None, description='the high end of a range, such as "20 min"')
    basis: Literal["published", "common practice"] = Field(
        description='"published" or "common practice"'
    )
    source: reference("sources") | None = Field(None, description="the key of its source")
    kept: bool = Field(
        False, description="true where its unit is its subject: it is then never converted"
    )

    @model_validator(mode="after")
    def _complete(self) -> Self:
        range_given = self.low is not None and self.high is not None
        if (self.value is not None) == range_given or (self.low is None) != (self.high is None):
            raise ValueError('a fact needs "value", or both "low" and "high"')
        if range_given and not _below(self.low, self.high):
            raise ValueError('"low" must be below "high", in a unit of the same kind')
        if self.basis == "published" and self.source is None:
            raise ValueError('a published fact has no source (expected a key "source")')
        return self


def _below(low: Measure, high: Measure) -> bool:
    same = low.quantity.kind == high.quantity.kind
    return same and low.quantity.number < high.quantity.to(low.quantity.unit).number


class Source(Format):
    """One source of sources.yaml: a published text that facts rest on."""

    title: Name = Field(description="the title of the text")
    publisher: Name = Field(description="who published it")
    where: Name | None = Field(None, description="the section or page")
    seen: Literal["read", "from memory"] = Field(description='"read" or "from memory"')


class Caution(Format):
    """One standing caution of cautions.yaml, printed in full on each page that names it."""

    title: Text = Field(description="the caution in a few words")
    text: Text = Field(description="the caution in full")
    called_for_by: list[Name] = Field(
        [],
        description='a list of phrases, such as "drain line" or "open/remove … cap*", where a slash '
        'stands between choices, "*" for any ending and "…" for up to four words: a step with one '
        "calls for it",
    )


class Term(Format):
    """One term of glossary.yaml: a word of the trade, as this handbook uses it."""

    term: Text = Field(description="the term, in the singular and in lower case")
    forms: list[Name] = Field([], description="a list of its other forms, such as the plural")
    abbreviation: Name | None = Field(None, description='such as "gpg"')
    means: Text = Field(description="what it means, in one or two plain sentences")
    instead_of: list[Name] = Field(
        [], description="a list of words that the handbook does not use for it"
    )
    learn: list[reference("learn")] = Field([], description="a list of lessons about it")

    @property
    def spellings(self) -> list[str]:
        """Every spelling under which a text may use the term."""
        return [self.term, *self.forms, *([self.abbreviation] if self.abbreviation else [])]


class Equipment(Format):
    """A unit of equipment, in generic terms.

    What is said of a missing key is what it then means. Worked-out figures: see `unit_figures`.
    """

    title: Text = Field(description="what the unit is called")
    short_title: Text | None = Field(None, description="its title in tables; missing: the title")
    summary: Text = Field(description="what kind of unit it is, in a sentence")
    units: Literal["us", "metric"] | None = Field(
        None, description="the units its figures are shown in; missing: those of the shop"
    )
    control: Control = Field(description="how its control decides to regenerate")
    control_voltage: Voltage | None = Field(
        None, description='of its low-voltage supply, such as "24 V"; missing: not known'
    )
    control_current: Literal["ac", "dc"] | None = Field(
        None, description='"ac" or "dc"; missing: as on the label of its adaptor'
    )
    figures_from: Text = Field(description="whose sheet the figures come from")
    resin_volume: Volume = Field(description='such as "1.5 ft3", of each tank')
    tank_diameter: Length = Field(description='such as "10 in"')
    tank_height: Length = Field(description='such as "54 in"')
    bed_depth: Length | None = Field(
        None, description="depth of the resin; missing: its volume divided by the tank's area"
    )
    resin_room: Length | None = Field(
        None, description="from the bottom of the resin to the tank's top; missing: not known"
    )
    service_flow: Flow | None = Field(
        None, description='rated flow in service, such as "8 gpm"; missing: not known'
    )
    valve_coefficient: FlowCoefficient | None = Field(
        None, description='such as "4 gpm/√psi"; missing: that of a usual household valve'
    )
    salt_per_regeneration: Mass = Field(description='such as "9 lb"')
    brine_tank_diameter: Length = Field(description='such as "18 in"')
    brine_well_diameter: Length | None = Field(
        None, description='such as "4 in"; missing: the usual one'
    )
    brine_grid_height: Length | None = Field(
        None, description="of the grid under the salt; missing: the salt lies on the floor"
    )
    water_left: Length | None = Field(
        None, description="height of the water that the draw leaves; missing: the usual one"
    )
    float_height: Length | None = Field(
        None, description="where the float shuts the refill; missing: not known"
    )
    backwash_flow: Flow = Field(description='such as "2.4 gpm"')
    slow_rinse_flow: Flow = Field(description='such as "0.45 gpm"')
    brine_draw_flow: Flow = Field(description='such as "0.7 gpm"')
    flow_pressure: Pressure | None = Field(
        None, description="at which slow rinse and brine draw have these flows; missing: the usual"
    )
    refill_flow: Flow = Field(description='such as "0.5 gpm"')
    refill_step: Time = Field(description='the step its refill time is set in, such as "1 min"')
    refills: Literal["last", "first"] = Field(
        "last", description='"first" or "last" in a regeneration; missing: last'
    )
    meter_step: Volume | None = Field(None, description='such as "10 gal"')
    backwash_time: Time = Field(description='such as "10 min"')
    brine_time: Time = Field(description='such as "60 min"')
    fast_rinse_time: Time = Field(description='such as "10 min"')
    hardness_step: Hardness = Field(description='the step its hardness is set in, such as "1 gpg"')

    @model_validator(mode="after")
    def _draws(self) -> Self:
        if not _below(self.slow_rinse_flow, self.brine_draw_flow):
            raise ValueError(
                '"brine_draw_flow" must be above "slow_rinse_flow": it is the same water with the '
                "brine that it draws"
            )
        return self

    @model_validator(mode="after")
    def _meter(self) -> Self:
        if self.control == "time clock" and self.meter_step is not None:
            raise ValueError('a time clock has no meter (expected no key "meter_step")')
        if self.control != "time clock" and self.meter_step is None:
            raise ValueError(
                f'the key "meter_step" is missing (expected the step of the {self.control}, '
                'such as "10 gal")'
            )
        return self


class SearchWord(Format):
    """One word of search_words.yaml: a word of the handbook, and what people say in its place."""

    said: list[Name] = Field(min_length=1, description='such as ["slimy", "silky"]')
