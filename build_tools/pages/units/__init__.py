"""The handbook in both unit systems: every page is made in both and then made one."""
