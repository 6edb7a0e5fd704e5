"""The command work-out: calculators at the terminal."""
