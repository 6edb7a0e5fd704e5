"""The HTML of one calculator form with its computed example, complete without scripts."""

from __future__ import annotations

import json
from pathlib import Path

from jinja2 import pass_context
from jinja2.runtime import Context
from markupsafe import Markup

from build_tools.content.both_systems import compares_units
from build_tools.language.speaking import in_words, is_english, said, say
from build_tools.templates import templates_in
from calculators.declare import Calculator, Input
from calculators.quantities import display_unit

_ENVIRONMENT = templates_in(Path(__file__).parent)


def form_html(
    calculator: Calculator,
    result: dict,
    *,
    picture: str = "",
    carried: dict[str, dict[str, str]] | None = None,
    form_id: str,
    texts: dict[str, str],
    units: str,
    runtime_url: str,
    exact: dict[str, str] | None = None,
    level: int = 3,
    folded: bool = False,
) -> str:
    """Return one `<section>` without blank lines, fit to stand in Markdown as raw HTML.

    result: what `calculators.run` answered for the example. texts: what the example's author
    wrote for an input; an input without a text shows how the calculator understood it.
    picture: the calculator's curve for the example, as SVG. carried: by its title, what each unit
    of equipment tells of the inputs. form_id: unique in its page. runtime_url: the runtime's folder
    as seen from the page. exact: for an input whose text was converted and rounded, what it means.
    level: the heading's level, which fits the form into the page's outline. folded: whether the
    working is folded until the reader asks for it.
    """
    if result["problems"]:
        problems = " ".join(result["problems"].values())
        raise ValueError(f"the example of the form {form_id!r} has no answer: {problems}")
    result = in_words(result)
    english = result.get("english", ())
    template = _ENVIRONMENT.get_template("form.html.jinja")
    html = template.render(
        calculator=calculator,
        result=result,
        picture=Markup(picture),
        carried={title: _figures(figures) for title, figures in (carried or {}).items()},
        form_id=form_id,
        fields=_fields(calculator, result, texts, units, exact or {}),
        numbers_named=_in_one_line(result["inputs"]),
        units=units,
        runtime_url=runtime_url if runtime_url.endswith("/") else f"{runtime_url}/",
        heading=say("Try your own numbers"),
        english=english,
        kept=compares_units(calculator),
        level=level,
        folded=folded,
    )
    return "\n".join(line.strip() for line in html.splitlines() if line.strip())


@pass_context
def _marked(context: Context, text: str) -> str:
    """Return a text of an answer; where it stays in English, it is marked as English."""
    return _as_english(text) if text in context["english"] else text


def _said(text: str) -> str:
    """Return a text of a calculator's declaration in the language spoken, or marked as English."""
    return _as_english(text) if is_english(text) else said(text)


def _as_english(text: str) -> Markup:
    return Markup('<span lang="en">{}</span>').format(text)


def _figures(figures: dict[str, str]) -> str:
    return json.dumps({name: said(text) for name, text in figures.items()}, ensure_ascii=False)


def _in_one_line(inputs: dict[str, dict]) -> str:
    return " · ".join(f"{one['label']}: {one['shown']}" for one in inputs.values())


def _fields(
    calculator: Calculator,
    result: dict,
    texts: dict[str, str],
    units: str,
    exact: dict[str, str],
) -> list[dict]:
    fields = []
    counting: set[str] = set()
    for declared in calculator.inputs:
        if _counts(declared, result, counting):
            counting.add(declared.name)
            understood = result["inputs"].get(declared.name, {"shown": ""})["shown"]
        else:
            understood = declared.example_text(units)
        if declared.choices:
            text = _chosen(declared, understood)
        else:
            text = texts.get(declared.name, understood)
        fields.append(
            {
                "declared": declared,
                "text": (text if declared.choices else said(text)).replace("\u00a0", " "),
                "exact": exact.get(declared.name),
                "unit": display_unit(declared.unit, units),
                "only_when": _only_when(declared),
                "slider": _slider(declared, units),
                "hidden": declared.name not in counting,
            }
        )
    return fields


def _chosen(declared: Input, understood: str) -> str:
    """Return the choice a field starts with.

    A choice whose example is not its default is a question of safety: its default refuses, and
    only the reader answers it, never the example.
    """
    return understood if declared.example == declared.default else declared.default


def _counts(declared: Input, result: dict, counting: set[str]) -> bool:
    """Return whether an input counts for the example, given the inputs before it that do."""
    if declared.only_when is None:
        return True
    other, choices = declared.only_when
    return other in counting and result["inputs"][other]["choice"] in choices


def _only_when(declared: Input) -> str | None:
    if declared.only_when is None:
        return None
    other, choices = declared.only_when
    return json.dumps({"input": other, "choices": list(choices)})


def _slider(declared: Input, units: str) -> str | None:
    texts = [said(text).replace("\u00a0", " ") for text in declared.slider_texts(units)]
    return json.dumps(texts, ensure_ascii=False) if texts else None


_ENVIRONMENT.globals["say"] = say
_ENVIRONMENT.filters |= {"said": _said, "plainly": said, "marked": _marked}
