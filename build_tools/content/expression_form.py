"""What an expression may be made of: names, what stands after their dots, and calls of them.

A shown value is a text. Whoever reckons with it gets another text and no number: twice "4" is "44".
"""

from __future__ import annotations

import re

from jinja2 import nodes

from build_tools.content.problems import asking

_EXPECTED = (
    "a name alone, such as {{ fact.name }}, or an answer, such as {{ work_out(…).answer }}: "
    "formulas stand in the calculators"
)


def wrong_form(template: nodes.Template, source: str) -> str | None:
    """Return what is wrong with the form of a parsed expression, as a sentence, or nothing.

    source: the expression as the sentence names it.
    """
    root = template.body[0].nodes[0]
    if _is_value(root) or _is_sign(root):
        return None
    does = (
        "types a value" if isinstance(root, nodes.Const) else "reckons with values, or changes them"
    )
    return asking(f'"{source}" {does}', _EXPECTED)


def _is_sign(node: nodes.Node) -> bool:
    """Tell whether this is a text without numbers, such as braces that are to be seen."""
    return (
        isinstance(node, nodes.Const)
        and isinstance(node.value, str)
        and not re.search(r"\w", node.value)
    )


def _is_value(node: nodes.Node) -> bool:
    if isinstance(node, nodes.Name):
        return True
    if isinstance(node, nodes.Getattr):
        return _is_value(node.node)
    if isinstance(node, nodes.Getitem):
        part = node.arg.value if isinstance(node.arg, nodes.Const) else None
        return _is_value(node.node) and isinstance(part, str)
    if isinstance(node, nodes.Call) and isinstance(node.node, nodes.Name):
        given = [*node.args, *(keyword.value for keyword in node.kwargs)]
        return not (node.dyn_args or node.dyn_kwargs) and all(
            isinstance(one, nodes.Const) or _is_value(one) for one in given
        )
    return False
