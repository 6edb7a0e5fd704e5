"""Pictures drawn from the same numbers as the answers, as scalable vector graphics in text."""

from calculators.figures.curve import curve_picture

__all__ = ["curve_picture"]
