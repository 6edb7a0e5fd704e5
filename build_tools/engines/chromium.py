"""How Chromium is started for tests and measurements; Playwright drives it."""

# No calls home, and no graphics card needed.
QUIET_FLAGS = (
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
)
