"""A translated text says the same: its expressions, links and numbers are the English ones."""

from __future__ import annotations

import pytest

from tests.language.conftest import LESSON, PROCEDURE, Shop

_FILE = "docs_src/es/procedures/set-the-cabinet.yaml"


def _line(shop: Shop, place: str, part: str) -> int:
    lines = (shop.docs / place).read_text("utf-8").splitlines()
    return next(number for number, line in enumerate(lines, 1) if part in line)


def test_an_expression_that_is_left_out_or_changed_is_told(shop: Shop) -> None:
    shop.change(PROCEDURE, "Espere {{ fact.calm_water }}.", "Espere {{ fact.cup }}.")
    line = _line(shop, PROCEDURE, "steps.3.do @")
    assert shop.problems == [
        f'{_FILE}:{line}: "steps.3.do" has the expression "{{{{ fact.cup }}}}", which the English '
        "text has not (expected the same in both)",
        f'{_FILE}:{line}: "steps.3.do" lacks the expression "{{{{ fact.calm_water }}}}" of the '
        "English text (expected the same in both)",
    ]


def test_a_typed_number_that_differs_is_told(shop: Shop) -> None:
    shop.change(LESSON, "que son 286 mg/L", "que son 268 mg/L")
    line = _line(shop, LESSON, "story:")
    assert shop.problems == [
        f'docs_src/{LESSON}:{line}: "harbor-flat-reading.story" has the number "268", which the '
        "English text has not (expected the same in both)",
        f'docs_src/{LESSON}:{line}: "harbor-flat-reading.story" lacks the number "286" of the '
        "English text (expected the same in both)",
        f'docs_src/{LESSON}:{line}: nothing backs the typed quantity "268 mg/L" (expected one of '
        "the block's own givens or answers; otherwise an expression: put the value in facts.yaml "
        "and write {{ fact.its_name }}, or compute it with {{ work_out(…) }} or a worked example)",
    ]


def test_a_decimal_comma_is_another_number(shop: Shop) -> None:
    shop.change(LESSON, "marca 16 °dH", "marca 16,0 °dH")
    assert any('has the number "16,0"' in one for one in shop.problems)


@pytest.mark.parametrize(
    ("said", "read"),
    [
        ("dos minutos", "two minutes"),
        ("doce minutos", "twelve minutes"),
        ("tres cuartos de hora", "three quarters hour"),
        ("sesenta por ciento", "sixty percent"),
    ],
)
def test_a_quantity_in_spanish_words_needs_backing_too(shop: Shop, said: str, read: str) -> None:
    shop.change(PROCEDURE, "Ponga la dureza.", f"Espere {said} y ponga la dureza.")
    [problem] = shop.problems
    assert f'nothing backs the typed quantity "{read}"' in problem


def test_a_link_that_leads_elsewhere_is_told(shop: Shop) -> None:
    shop.change(LESSON, "../equipment/kitchen-cabinet.md", "../equipment/index.md")
    line = _line(shop, LESSON, "../equipment/index.md")
    start = _line(shop, LESSON, "<!-- @")
    assert shop.problems == [
        f'docs_src/{LESSON}:{start}: the section "#start" lacks the link '
        '"../equipment/kitchen-cabinet.md" of the English text (expected the same in both)',
        f'docs_src/{LESSON}:{line}: the section "#start" has the link "../equipment/index.md", '
        "which the English text has not (expected the same in both)",
    ]


def test_a_block_that_is_left_out_is_told(shop: Shop) -> None:
    text = (shop.docs / LESSON).read_text("utf-8")
    start = text.index("```picture")
    shop.write(LESSON, text[:start])
    line = _line(shop, LESSON, "<!-- @")
    assert shop.problems == [
        f'docs_src/{LESSON}:{line}: the section "#start" lacks the block "capacity-by-salt" of the '
        "English text (expected the same blocks in both)"
    ]


def test_a_text_must_say_what_it_translates(shop: Shop) -> None:
    shop.write("es/paths.yaml", "first-visit.title: La primera visita\n")
    assert shop.problems == [
        'docs_src/es/paths.yaml:1: "first-visit.title" does not say which English text it '
        "translates (expected first-visit.title @1a2b3c4d)"
    ]


def test_a_file_of_no_english_page_is_told(shop: Shop) -> None:
    shop.write("es/learn/no-such-lesson.md", "")
    assert shop.problems == [
        'docs_src/es/learn/no-such-lesson.md:1: there is no "learn/no-such-lesson.md" in English '
        "that this file could translate (expected a lesson, a procedure, or one of: cautions.yaml, "
        "paths.yaml, titles.yaml, glossary.yaml)"
    ]


def test_a_word_that_the_glossary_sets_aside_is_told(shop: Shop) -> None:
    term = "softener:\n  term: softener\n  means: A unit that softens water.\n"
    shop.write("glossary.yaml", term)
    wanted = "softener: {term: ablandador, instead_of: [suavizador]}\n"
    shop.write("es/glossary.yaml", wanted + "softner: {term: x}\n")
    shop.change(PROCEDURE, "Ajustar el gabinete", "Ajustar el suavizador")
    line = _line(shop, PROCEDURE, "suavizador") - 1
    assert shop.problems == [
        'docs_src/es/glossary.yaml:2: the glossary has no term "softner" (expected "softener")',
        f'{_FILE}:{line}: "suavizador" is no word of this handbook (expected "ablandador", see the '
        "glossary)",
    ]
