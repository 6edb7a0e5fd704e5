"""Practice: exercises posed from a seed and marked by reckoning them again.

An exercise is plain data, made from docs_src/practice by the build. Nothing that it asks for is
stored with it: a seed gives the same question wherever it is posed, and its answer is worked out
when it is marked.
"""
