"""The handbook on paper: the whole, one path, the pocket sheet and sign-off sheets as PDF files."""
