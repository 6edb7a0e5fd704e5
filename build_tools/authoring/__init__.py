"""Help for who writes sources: schemas for editors, new files, reports of the check."""
