"""The parts of a solution, all of one shape."""


def part(title, *, inputs=(), workings=(), values=(), ordered=(), sentences=(), calculator=""):
    """Return a part: rows of "label" and "shown", workings, steps in order, and sentences."""
    return {
        "title": title,
        "calculator": calculator,
        "inputs": list(inputs),
        "workings": list(workings),
        "values": list(values),
        "ordered": list(ordered),
        "sentences": list(sentences),
    }


def rows(named):
    """Return the rows of a calculator's inputs or values."""
    return [{"label": one["label"], "shown": one["shown"]} for one in named.values()]
