"""The search of the site: our ranking, in the place of the theme's, under the theme's own look."""
