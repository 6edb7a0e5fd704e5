"""Measurements of speed: as measured on this machine, side by side in one run."""
