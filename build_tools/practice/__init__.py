"""Exercises as the calculators take them: plain data from the files of docs_src/practice."""
