"""Handbooks of other shops: they draw on the shipped one and replace what differs."""
