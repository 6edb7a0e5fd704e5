"""Other languages than English: of the interface's own words, and of pages."""
