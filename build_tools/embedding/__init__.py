"""Calculators on other sites: a bare page for each, and the script that puts it into a page."""
