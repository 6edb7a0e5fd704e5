"""The positions of the valve, in the order of a regeneration."""

SERVICE, BACKWASH, BRINE, FAST_RINSE, REFILL = range(5)
#: Names of the positions, by number.
POSITIONS = ("service", "backwash", "brine", "fast rinse", "refill")
