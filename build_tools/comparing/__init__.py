"""What changed between two editions: every printed number with its cause, and every text."""
