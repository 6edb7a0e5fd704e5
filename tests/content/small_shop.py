"""A complete small shop as texts, which tests write to a folder and break one thing at a time."""

from __future__ import annotations

from pathlib import Path

from build_tools.checks import find_problems

FILES = {
    "shop.yaml": """\
name: Wren Lane Water
town: Hollow Weir
region: Two wells and a river.
units: us
typical_home:
  people: 4
  hardness: 17 gpg
  iron: 0.5 mg/L
iron_allowance: 4 gpg per mg/L
manganese_allowance: 4 gpg per mg/L
water_per_person: 60 gal/day
hot_share: 35 %
test_kits:
  - name: Drop kit
    measures: hardness
    step: 1 gpg
currency: $
salt_bag: 40 lb
salt_bag_price: 8.25
water_price: 6
sewer_price: 0
water_price_volume: 1000 gal
equipment:
  - meter-unit
  - clock-unit
""",
    "facts.yaml": """\
bucket:
  is: The bucket in the van
  value: 5 gal
  basis: common practice
scald_limit:
  is: Hottest safe water at a tap
  value: 140 °F
  basis: published
  source: burn-leaflet
flush_time:
  is: How long a tap runs before a sample
  low: 2 min
  high: 3 min
  basis: common practice
""",
    "sources.yaml": """\
burn-leaflet:
  title: Burns at the tap
  publisher: A public office
  seen: from memory
""",
    "cautions.yaml": """\
hot-water:
  title: Hot water burns
  text: Above {{ fact.scald_limit }} water burns at once.
""",
    "equipment/meter-unit.yaml": """\
title: Meter softener
summary: A tank of {{ unit.resin_volume }} with a meter.
control: delayed meter
figures_from: the sheet in the van
resin_volume: 1.5 ft3
tank_diameter: 10 in
tank_height: 54 in
salt_per_regeneration: 9 lb
brine_tank_diameter: 18 in
backwash_flow: 2.4 gpm
slow_rinse_flow: 0.45 gpm
brine_draw_flow: 0.7 gpm
refill_flow: 0.5 gpm
refill_step: 1 min
meter_step: 10 gal
backwash_time: 10 min
brine_time: 60 min
fast_rinse_time: 10 min
hardness_step: 1 gpg
""",
    "equipment/clock-unit.yaml": """\
title: Clock softener
summary: A small tank with a clock.
control: time clock
figures_from: the sheet in the van
resin_volume: 1 ft3
tank_diameter: 9 in
tank_height: 48 in
salt_per_regeneration: 6 lb
brine_tank_diameter: 18 in
backwash_flow: 2 gpm
slow_rinse_flow: 0.3 gpm
brine_draw_flow: 0.5 gpm
refill_flow: 0.5 gpm
refill_step: 2 min
backwash_time: 8 min
brine_time: 50 min
fast_rinse_time: 6 min
hardness_step: 1 gpg
""",
    "procedures/first-look.yaml": """\
title: First look
goal: Know what to check next.
when:
  - Every visit.
cautions:
  - hot-water
before:
  - Ask when salt was last added.
tools:
  - The {{ fact.bucket }} bucket
steps:
  - do: Run a raw tap for {{ fact.flush_time }}.
    why: >-
      Water that stood in the pipe
      is not the well's water.
    expect:
      - reading: Flow at the drain
        value: unit.backwash_flow
      - reading: Refill
        calculate: brine-refill
        inputs:
          salt: unit.salt_per_regeneration
          refill_flow: unit.refill_flow
        show: refill_time
      - reading: Counter step
        value: unit.meter_step
        only_for: [delayed meter]
    decide:
      - if: The flow is low.
        then: Measure it.
        go_to: procedures/drain-flow
decide:
  - if: The salt is a bridge.
    then: Break it.
    go_to: faults/salt-bridge
close:
  - Write down what was found.
learn:
  - hardness
group: Testing water
""",
    "procedures/drain-flow.yaml": """\
title: Drain flow
goal: Know the flow at the drain.
when:
  - The first look says so.
cautions: []
before: []
tools: []
steps:
  - do: Catch the water, as [the lesson](../learn/hardness.md#a-setting) says.
close:
  - Put the drain line back.
group: Testing water
""",
    "faults/salt-bridge.yaml": """\
title: Salt bridge
group: Brine
customer_says:
  - The salt never goes down.
seen:
  - A hollow under the salt. ![A bridge of salt](../images/bridge.svg)
mistaken_for:
  - fault: no-salt
    tell: Push a broom handle down.
confirm: The handle falls through.
remedy:
  - Break the bridge.
prevent: Fill by {{ work_out("brine-refill", salt="9 lb", refill_flow="0.5 gpm").salt_dissolved }}.
cautions: []
procedures:
  - drain-flow
share_of_calls: 4 %
minutes: 20
simulation:
  - change: salt_bridged
    from: 1
    to: 1
likelihoods_from: the trainer's own judgement
likelihoods:
  complaint: {hard: 60 %, salt-unused: 40 %}
  rod: {hollow: 95 %, loose: 5 %}
""",
    "faults/no-salt.yaml": """\
title: No salt
group: Brine
customer_says:
  - The water is hard.
seen:
  - An empty tank.
confirm: Look.
remedy:
  - Add salt.
prevent: Tell the customer.
cautions: []
procedures: []
learn:
  - hardness
share_of_calls: 7.5 %
minutes: 15
homes: {well: 50 %}
proved_by:
  - check: salt-height
    result: none
follows: [salt-bridge]
simulation:
  - change: salt_left
    from: 0
    to: 5 lb
likelihoods_from: the trainer's own judgement
likelihoods:
  complaint: {hard: 97 %}
  salt-height: {none: 97 %}
""",
    "checks/complaint.yaml": """\
title: Complaint
stage: telephone
order: 1
minutes: 0
kind: look
how:
  - Listen.
tools: []
results:
  - name: hard
    label: Hard water
    means: The water is hard.
  - name: salt-unused
    label: Salt not used
    means: The salt never goes down.
cautions: []
procedures: []
""",
    "checks/salt-height.yaml": """\
title: Salt height
stage: salt and brine
order: 1
minutes: 0.2
kind: look
how:
  - Lift the lid.
tools: []
results:
  - name: above
    label: Above the water
    means: There is salt.
  - name: none
    label: No salt
    means: There is none.
cautions: []
procedures: []
""",
    "checks/rod.yaml": """\
title: Rod through the salt
stage: salt and brine
order: 2
minutes: 0.5
overlaps_minutes: 0.25
kind: feel
how:
  - Push the rod down to the floor.
say: I look for a hollow.
tools:
  - A blunt rod
results:
  - name: loose
    label: Loose
    means: The rod reaches the floor.
  - name: hollow
    label: Hollow
    means: The rod falls through a crust.
needs:
  - check: salt-height
    result: above
erases: [salt-height]
opens: true
stop_if:
  - The tank is cracked.
cautions:
  - hot-water
procedures:
  - first-look
learn:
  - hardness
""",
    "learn/hardness.md": """\
---
title: Hardness
order: 1
minutes: 10
aim: Set a control.
can_now:
  ['work out a setting', read a kit, name the units]
questions:
  [{ask: 'What does a home of {{ home.people }} need?',
    answer: 'A setting of {{ example("gannet-lane").setting }}.'}, {ask: Why?, answer: So.}, {ask: How?, answer: So.}]
---
# Hardness

Water of {{ home.hardness }} is very hard; see [the units](../reference/units.md).

## A setting

```worked-example
id: gannet-lane
title: A setting for Gannet Lane
story: A test reads 18 gpg, which is 308 mg/L, and 0.5 mg/L of iron.
calculate: hardness-setting
given:
  hardness: 18 gpg
  iron: 0.5 mg/L
answers:
  setting: 20 gpg
  compensated: 342 mg/L
```

Go on to [the bridge](../faults/salt-bridge.md#seen).

```picture
id: capacity-by-salt
title: The capacity by salt
calculate: resin-capacity
given: {salt: 9 lb, resin_volume: 1.5 ft3}
note: More salt gives more, and less for each pound.
```
""",
    "index.md": """\
# Welcome

Start with the [first look](procedures/first-look.md#step-1).
""",
    "images/bridge.svg": "<svg/>\n",
}


def write(folder: Path, files: dict[str, str]) -> Path:
    """Write a shop's files below `folder`/docs_src and return that."""
    docs = folder / "docs_src"
    for name, text in files.items():
        path = docs / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return docs


def changed(name: str, old: str, new: str) -> dict[str, str]:
    """Return the small shop with one piece of one file replaced; the piece must be there."""
    assert FILES[name].count(old) >= 1, f"{name} has no {old!r}"
    return {**FILES, name: FILES[name].replace(old, new, 1)}


def problems_of(folder: Path, files: dict[str, str]) -> list[str]:
    """Write a shop and return the lines of its problems."""
    return [str(problem) for problem in find_problems(write(folder, files), folder)]
