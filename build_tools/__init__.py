"""Everything that turns the source files into the handbook: set-up, checks, pages."""
