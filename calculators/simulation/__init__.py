"""The simulated home: household, softener, brine tank, control, valve and water heater."""
