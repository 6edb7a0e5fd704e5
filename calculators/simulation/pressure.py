"""Water pressure through the home: what the softener, its injector and its drain feel."""

from math import sqrt

from calculators.beads import BEAD, SETTLED_VOIDS, tank_area, viscous_loss, whirling_loss
from calculators.drain_line import FITTING
from calculators.injector import LEAST_PRESSURE, USUAL_PRESSURE, motive_at, suction_at
from calculators.pipe import hazen_williams, height_pressure

#: Power of the flow that friction grows with, by the rule of Hazen and Williams.
FRICTION_POWER = 1.852
SMOOTHNESS = 140.0
#: Losses [psi] in the valve and needs of a flow control; common practice, no source.
VALVE_LOSS, CONTROL_NEED = 5.0, 15.0
#: Below this share of its flow the drain line starves the injector, and below the second the water
#: turns into the brine tank at the last flow [gpm] at the most; common practice, no source.
STARVES, TURNS, TURNED = 0.5, 0.2, 0.5
LEAST_TURNED = 0.1  # gpm


class Pressure:
    """The supply of one home and the softener's own flows, under its present condition."""

    __slots__ = (
        "static", "temperature", "supply_rate", "drain_rate", "rise", "column", "backwash",
        "suction", "motive", "viscous", "whirling", "valve_coefficient",
    )  # fmt: skip

    def __init__(self, home, physics):
        """Take what a home is built of; see `home.Home`."""
        self.static, self.temperature = home.pressure, home.temperature
        # Friction [psi] of 1 gpm; it grows with FRICTION_POWER of the flow.
        self.supply_rate = home.supply_length * hazen_williams(
            1.0, home.supply_bore, SMOOTHNESS, home.temperature
        )
        self.drain_rate = (home.drain_length + home.drain_fittings * FITTING) * hazen_williams(
            1.0, home.drain_bore, SMOOTHNESS, home.temperature
        )
        self.rise, self.column = home.drain_rise, height_pressure(home.temperature)
        self.backwash = home.backwash
        self.suction, self.motive = physics.suction * home.resin, physics.motive * home.resin
        area = tank_area(home.tank_diameter)
        depth = home.resin / area  # ft
        each = 1 / area
        self.viscous = depth * viscous_loss(each, BEAD, SETTLED_VOIDS, home.temperature)
        self.whirling = depth * whirling_loss(each, BEAD, SETTLED_VOIDS, home.temperature)
        self.valve_coefficient = home.valve_coefficient

    def at_softener(self, flow, condition):
        """Return the pressure [psi] before the softener while the home and drain take a flow [gpm].

        The line to the street costs friction; a home on a well has one to its pressure tank.
        """
        static = self.static * condition.supply_pressure_factor
        return max(0.0, static - self.supply_rate * flow**FRICTION_POWER)

    def loss_in_service(self, flow, condition):
        """Return the pressure [psi] that the softener costs at a service flow [gpm].

        Bed and valve as in the calculator of the service pressure; the bed's part grows with
        faults. A shorter bed costs less in proportion.
        """
        bed = self.viscous * flow + self.whirling * flow**2
        bed *= condition.pressure_loss_factor * condition.bed_volume_factor
        return bed + (flow / self.valve_coefficient) ** 2

    def back(self, flow, condition):
        """Return what the drain line pushes back [psi] at a flow [gpm]: friction and lift."""
        lift = self.column * (self.rise + condition.drain_rise)
        return max(0.0, self.drain_rate * flow**FRICTION_POWER + lift)

    def drain_flow(self, house, condition):
        """Return the flow [gpm] at the drain in backwash and fast rinse, while the house draws.

        The flow control holds its rating until less pressure is left than it needs. The supply's
        loss is taken at the rated flow, which is a little too much where less runs.
        """
        rated = self.backwash
        left = self.at_softener(house + rated, condition) - VALVE_LOSS - self.back(rated, condition)
        held = min(1.0, sqrt(left / CONTROL_NEED)) if left > 0 else 0.0
        through = condition.drain_flow_factor * condition.drain_control_factor
        return rated * held * through * condition.drain_flow_excess

    def injector_flows(self, house, condition):
        """Return suction and motive flow [gpm] in the brine position; suction below 0 is a push.

        The injector feels the supply less what the drain pushes back. A drain that lets little
        through starves it, and at last turns its water into the brine tank.
        """
        full = self.suction + self.motive
        through = condition.drain_flow_factor
        if condition.drain_control_factor < 1:
            through = min(through, condition.drain_control_factor * self.backwash / full)
        felt = self.at_softener(house + self.motive, condition) - self.back(full, condition)
        felt = max(0.0, felt)
        motive = motive_at(felt, self.motive, USUAL_PRESSURE)
        motive *= condition.motive_flow_factor * min(1.0, through / STARVES)
        if through < TURNS and felt > LEAST_PRESSURE:
            pushed = max(LEAST_TURNED, TURNED * (1 - through / TURNS))
            return -min(pushed, max(motive, LEAST_TURNED)), motive
        suction = suction_at(felt, self.suction, USUAL_PRESSURE) * condition.suction_factor
        if through < STARVES:
            suction *= (through - TURNS) / (STARVES - TURNS)
        return max(0.0, suction), motive
