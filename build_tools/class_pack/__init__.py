"""A pack for a class: printed question sheets, their key, and files for learning systems."""
