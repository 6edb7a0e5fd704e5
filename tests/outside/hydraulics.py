"""Pressure in pipes and beds and the lift of beads, by general libraries, for the checks."""

import math
import tempfile
import warnings
from pathlib import Path

import fluids
import wntr
from scipy.optimize import brentq

#: °C: density [kg/m3] and viscosity [Pa·s] of water by the formulations of the International
#: Association for the Properties of Water and Steam, computed with chemicals 1.5.2.
WATER = {
    4: (999.975, 1.5673e-3),
    10: (999.70, 1.3059e-3),
    20: (998.21, 1.0016e-3),
    25: (997.05, 0.8900e-3),
}
BEAD, BEAD_DENSITY, SETTLED = 0.58e-3, 1260, 0.39
GPM_PER_SQUARE_FOOT = 6.790862e-4  # m/s, computed with pint


def epanet_loss(flow, bore, length, smoothness=None, roughness=None):
    """Return what a pipe [gpm, in, ft] loses at 20 °C [psi], by the EPANET engine in wntr.

    smoothness: for the rule of Hazen and Williams; else roughness [m], for Darcy and Weisbach.
    """
    network = wntr.network.WaterNetworkModel()
    network.options.hydraulic.accuracy = 1e-8
    network.options.time.duration = 0
    if smoothness is None:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")  # that the roughness keeps its number: it is set below
            network.options.hydraulic.headloss = "D-W"
    network.add_reservoir("main", base_head=1000)
    network.add_junction("drain", base_demand=flow * 3.785411784e-3 / 60, elevation=0)
    network.add_pipe(
        "line",
        "main",
        "drain",
        length=length * 0.3048,
        diameter=bore * 0.0254,
        roughness=roughness if smoothness is None else smoothness,
    )
    with tempfile.TemporaryDirectory() as folder:
        engine = wntr.sim.EpanetSimulator(network)
        heads = engine.run_sim(file_prefix=str(Path(folder, "run"))).node["head"]
    return float(1000 - heads["drain"].iloc[0]) * WATER[20][0] * 9.80665 / 6894.757293


def darcy_loss(flow, bore, length, celsius):
    """Return the pressure [psi] a smooth pipe [gpm, in, ft] loses, with fluids' friction factor."""
    density, viscosity = WATER[celsius]
    speed = flow * 3.785411784e-3 / 60 / (math.pi / 4 * (bore * 0.0254) ** 2)
    reynolds = fluids.Reynolds(V=speed, D=bore * 0.0254, rho=density, mu=viscosity)
    factor = fluids.friction_factor(Re=reynolds, eD=1.5e-6 / (bore * 0.0254))
    return factor * length * 0.3048 / (bore * 0.0254) * density * speed**2 / 2 / 6894.757293


def bed_loss(law, flow_per_area, celsius, bead, voids):
    """Return the pressure [psi] of a foot of bed [gpm/ft2, mm] by a law of fluids.packed_bed."""
    density, viscosity = WATER[celsius]
    speed = flow_per_area * GPM_PER_SQUARE_FOOT
    pascal = law(dp=bead / 1000, voidage=voids, vs=speed, rho=density, mu=viscosity, L=0.3048)
    return pascal / 6894.757293


def lifted(flow_per_area, celsius):
    """Return the expansion [%] by Richardson and Zaki, with the sinking speed of fluids.drag."""
    density, viscosity = WATER[celsius]
    sinking = fluids.drag.v_terminal(D=BEAD, rhop=BEAD_DENSITY, rho=density, mu=viscosity)
    reynolds = sinking * BEAD * density / viscosity
    voids = (flow_per_area * GPM_PER_SQUARE_FOOT / sinking) ** (reynolds**0.1 / 4.45)
    return 100 * ((1 - SETTLED) / (1 - voids) - 1)


def lifted_by_ergun(flow_per_area, celsius):
    """Return the expansion [%] at which fluids' Ergun equation carries the weight of the beads."""
    density, viscosity = WATER[celsius]

    def unbalanced(voids):
        pascal = fluids.packed_bed.Ergun(
            dp=BEAD,
            voidage=voids,
            vs=flow_per_area * GPM_PER_SQUARE_FOOT,
            rho=density,
            mu=viscosity,
        )
        return pascal - (1 - voids) * (BEAD_DENSITY - density) * 9.80665

    return 100 * ((1 - SETTLED) / (1 - brentq(unbalanced, SETTLED, 0.95)) - 1)
