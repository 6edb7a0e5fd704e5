"""The brine tank through time: water, dissolved salt, solid salt, and how high they stand."""

from math import exp, inf, pi

from calculators.brine import ROOM_OF_SALT
from calculators.brine_level import water_below, water_height
from calculators.brine_strength import (
    DISSOLVING_TIME,
    dissolving_time,
    salt_in_water,
    saturation,
)
from calculators.leaks import CUBIC_INCHES_IN_A_GALLON
from calculators.quantities import convert
from calculators.simulation.physics import SOLID_SALT, USUAL_PHYSICS
from calculators.units import GALLON, POUND
from calculators.water_properties import density
from calculators.weak_brine import strength_by_levels

CUBIC_INCHES_IN_A_CUBIC_FOOT = 1728.0
#: The longest piece of a slow inflow over which the salt's goal may count as moving evenly.
SHORT = 60.0  # min


class BrineTank:
    """A round brine tank without a grid.

    water: gal. dissolved, salt, hanging: lb of salt in the water, under it or on it, and hanging
    above in a bridge. time: true time [min] the state is of. added, drawn, spilled, filled: what
    came in and went out in all: filled and spilled in gal of water, the salt in lb.
    """

    __slots__ = (
        "area", "well", "heel_height", "rim", "float_height", "voids", "in_a_pound", "strongest",
        "slowness", "physics", "water", "dissolved", "salt", "hanging", "time", "filled",
        "spilled", "spilled_salt", "drawn", "drawn_water", "added",
    )  # fmt: skip

    def __init__(self, diameter, well, heel_height, float_height, rim, temperature, salt,
                 physics=USUAL_PHYSICS):  # fmt: skip
        """Make a tank [in, °F, lb] that holds brine up to its heel."""
        celsius = convert(temperature, "°F", "°C", "temperature")
        self.area, self.well = pi * diameter**2 / 4, pi * well**2 / 4
        self.heel_height, self.float_height, self.rim = heel_height, float_height, rim
        self.physics = physics
        self.voids = 1 - physics.salt_bulk / SOLID_SALT
        self.in_a_pound = CUBIC_INCHES_IN_A_CUBIC_FOOT / physics.salt_bulk / self.area
        pounds_of_water = density(temperature) / 1000 * GALLON / POUND
        self.strongest = salt_in_water(saturation(celsius)) * pounds_of_water  # lb/gal of water
        self.slowness = dissolving_time(celsius) * physics.dissolving_time / DISSOLVING_TIME
        self.salt, self.hanging, self.time = salt, 0.0, 0.0
        brine = self.volume_at(heel_height)
        self.water = brine / (1 + self.strongest * ROOM_OF_SALT)
        self.dissolved = self.strongest * self.water
        self.filled = self.spilled = self.spilled_salt = 0.0
        self.drawn = self.drawn_water = self.added = 0.0

    # Geometry

    def salt_height(self):
        """Return the height [in] of the top of the salt that is not in a bridge."""
        return self.salt * self.in_a_pound

    def layers(self):
        among = (self.area - self.well) * self.voids + self.well
        return (self.salt * self.in_a_pound, among), (inf, self.area)

    def volume_at(self, height):
        """Return the brine [gal] that stands up to a height [in]."""
        return water_below(height, self.layers()) / CUBIC_INCHES_IN_A_GALLON

    def brine(self):
        """Return the brine [gal]: water with the room its salt takes up."""
        return self.water + ROOM_OF_SALT * self.dissolved

    def level(self):
        """Return the height [in] of the brine."""
        return water_height(self.brine() * CUBIC_INCHES_IN_A_GALLON, self.layers())

    def strength(self):
        """Return the salt in the brine beside saturated brine [1], by salt for each water."""
        return self.dissolved / (self.strongest * self.water) if self.water > 0 else 0.0

    # Salt

    def add_salt(self, pounds):
        """Add a bag; on a bridge it hangs with the rest."""
        if self.hanging > self.salt:
            self.hanging += pounds
        else:
            self.salt += pounds
        self.added += pounds

    def set_salt(self, pounds, bridged_share=0.0):
        """Let the solid salt be so much; without any, the brine is spent too."""
        self.added += pounds - self.salt - self.hanging
        self.salt, self.hanging = pounds, 0.0
        if pounds == 0:
            self.added -= self.dissolved
            self.dissolved = 0.0
        if bridged_share:
            self.bridge(bridged_share)

    def bridge(self, share):
        """Let a share [1] of the solid salt hang above the water.

        Brine takes the room the salt leaves in the hollow, so its level falls at once and more of
        it stays below the heel.
        """
        both = self.salt + self.hanging
        self.salt, self.hanging = both * (1 - share), both * share

    def goal(self):
        """Return the dissolved salt [lb] that waiting would lead to."""
        if self.salt <= 0:
            return self.dissolved
        share = strength_by_levels(
            self.salt_height(), max(self.level(), 1e-9), self.voids, self.physics.pick_up
        )
        goal = min(self.dissolved + self.salt, self.strongest * self.water * share)
        return max(goal, self.dissolved)

    # Time

    def settle(self, now):
        """Let salt dissolve until a time."""
        if now > self.time:
            self._dissolve(self.goal(), 0.0, now - self.time)
            self.time = now

    def _dissolve(self, goal, pace, minutes):
        """Let the gap to a goal [lb] that moves with a pace [lb/min] close by its law."""
        gone = exp(-minutes / self.slowness)
        behind = pace * self.slowness
        after = goal + pace * minutes - behind + (self.dissolved - goal + behind) * gone
        after = min(max(after, self.dissolved), self.dissolved + self.salt)
        self.salt = max(0.0, self.salt - (after - self.dissolved))
        self.dissolved = after

    def fill(self, flow, minutes, float_height=None):
        """Let water run in [gpm, min] until the float shuts; return the water that came in [gal].

        Settle the tank first. What finds no room below the rim spills.
        """
        shut = self.float_height if float_height is None else float_height
        came = 0.0
        end = self.time + minutes
        while self.time < end - 1e-9:
            room = self.volume_at(shut) - self.brine()
            if flow <= 0 or room <= 1e-9:
                self.settle(end)
                break
            piece = min(SHORT, end - self.time, room / flow)
            before = self.goal()
            self.water += flow * piece
            came += flow * piece
            after = self.goal()
            self._dissolve(before, (after - before) / piece, piece)
            self.time += piece
            self._spill()
        self.filled += came
        return came

    def _spill(self):
        over = self.brine() - self.volume_at(self.rim)
        if over > 0:
            share = over / self.brine()
            self.spilled += share * self.water
            self.spilled_salt += share * self.dissolved
            self.water -= share * self.water
            self.dissolved -= share * self.dissolved

    def above_heel(self):
        """Return the brine [gal] above the height at which the air check shuts."""
        return max(0.0, self.brine() - self.volume_at(self.heel_height))

    def draw(self, brine):
        """Take brine [gal, at most what there is] out; return the water [gal] and salt [lb]."""
        there = self.brine()
        share = min(1.0, brine / there) if there > 0 else 0.0
        water, salt = share * self.water, share * self.dissolved
        self.water -= water
        self.dissolved -= salt
        self.drawn += salt
        self.drawn_water += water
        return water, salt
