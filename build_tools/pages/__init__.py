"""From loaded content to the pages of the site."""
