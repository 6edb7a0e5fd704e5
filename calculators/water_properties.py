"""How thick and how heavy water is, by its temperature."""

from calculators.quantities import convert

GRAVITY = 9.80665  # m/s2, what makes density a weight


def viscosity(temperature):
    """Return the viscosity [mPa·s] of water of a temperature [°F, 32 to 140].

    A sum of four powers of the absolute temperature, within one percent. Source: water-viscosity.

    >>> round(viscosity(68), 3)
    1.002
    """
    warmth = (convert(temperature, "°F", "°C", "temperature") + 273.15) / 300
    return (
        280.68 * warmth**-1.9
        + 511.45 * warmth**-7.7
        + 61.131 * warmth**-19.6
        + 0.45903 * warmth**-40
    ) / 1000


def density(temperature):
    """Return the density [kg/m3] of water of a temperature [°F, 32 to 140] free of air.

    Made for 0 to 40 °C, where it is right to seven digits; at 60 °C still to four. Source:
    water-density.

    >>> round(density(50), 1)
    999.7
    """
    celsius = convert(temperature, "°F", "°C", "temperature")
    return 999.97495 * (
        1 - (celsius - 3.983035) ** 2 * (celsius + 301.797) / (522528.9 * (celsius + 69.34881))
    )
