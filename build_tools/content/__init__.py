"""The handbook's source files: their formats, loading with line numbers, and their values."""
