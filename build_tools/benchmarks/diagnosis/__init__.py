"""How well the diagnosis finds hidden faults, against a fixed and a random order of checks."""
