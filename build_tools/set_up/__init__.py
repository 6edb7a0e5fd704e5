"""From a bare machine to a running command.

Everything in this folder is plain standard library and in the syntax of Python 3.7, because it
runs before the environment exists, under whatever `python3` the machine has.
"""
