"""The command serve: the site while its sources change, with what is wrong in them on the page."""
