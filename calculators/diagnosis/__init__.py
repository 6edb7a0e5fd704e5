"""The diagnosis: from what was read to what is likely, and what to read next."""
