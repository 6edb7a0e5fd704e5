"""Browsers other than Chromium, driven through one small interface, for tests and measurements.

Chromium is driven with Playwright, which cannot drive the others as they are installed. Their
packages are the tests' packages.
"""
