"""The command build: the site as a folder of files for any web host."""
