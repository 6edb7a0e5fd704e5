"""The exercises of a sheet for learning systems: Question and Test Interoperability, version 2.1.

This open standard of 1EdTech, formerly IMS Global, is read by more systems today than its version
3.0. `items.py` writes a question, `assessment.py` the test and the list of a package's files,
`structure.py` holds each file to the part of the standard that is used, before it is written.
"""
