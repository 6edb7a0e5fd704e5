"""Drawings without a calculator: a picture of a thing as it is given. The build alone draws them."""

from types import SimpleNamespace

from calculators import read
from calculators.figures.resin_bed import RESIN_BED
from calculators.figures.water_way import WATER_WAY

#: Every such drawing by its name.
DRAWINGS = {one.name: one for one in (WATER_WAY, RESIN_BED)}


def drawing(name, given, units="us"):
    """Return a drawing as SVG, None with a problem, and the problems: a sentence for each input.

    name: a key of DRAWINGS. given, units: as `calculators.run` takes inputs.
    """
    result = {"inputs": {}, "problems": {}}
    values = read(DRAWINGS[name], given, units, result)
    if result["problems"]:
        return None, result["problems"]
    return DRAWINGS[name].draw(SimpleNamespace(**values)), {}
