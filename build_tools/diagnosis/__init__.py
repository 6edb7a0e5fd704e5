"""What the diagnosis rests on: simulated homes, the shop's record of calls."""
