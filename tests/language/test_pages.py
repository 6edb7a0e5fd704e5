"""Pages of another language: its words, English where they are not translated, and links."""

from __future__ import annotations

from collections.abc import Callable

from tests.language.conftest import LESSON, PROCEDURE, Shop

PageOf = Callable[[Shop, str], str]
_LESSON, _PROCEDURE = "es/learn/the-spring.md", "es/procedures/set-the-cabinet.md"


def test_a_procedure_is_in_the_language_with_the_numbers_of_the_english_one(
    shop: Shop, page_of: PageOf
) -> None:
    spanish = page_of(shop, _PROCEDURE)
    english = page_of(shop, "procedures/set-the-cabinet.md")
    assert spanish.startswith("# Ajustar el gabinete\n")
    assert "## Pasos {#steps}" in spanish and "## Steps {#steps}" in english
    assert "Desenchufe antes de quitar la tapa." in spanish
    assert "Wait 10 to 15 min." in english
    assert "Espere de 10 a 15 min." in spanish
    assert "Ajuste para la casa típica" in spanish


def test_a_stale_step_is_shown_in_the_new_english_and_marked_as_english(
    shop: Shop, page_of: PageOf
) -> None:
    step = "  - do: Enter the hardness."
    shop.change("procedures/set-the-cabinet.yaml", step, "  - do: Enter the new hardness.")
    page = page_of(shop, _PROCEDURE)
    assert '<span lang="en">Enter the new hardness.</span>' in page
    assert "Ponga la dureza." not in page
    assert "Espere" in page


def test_a_stale_section_is_shown_in_english_and_says_so_at_the_head(
    shop: Shop, page_of: PageOf
) -> None:
    assert "todavía no está traducido" not in page_of(shop, _LESSON)
    shop.change("learn/the-spring.md", "Everyone in", "Everybody in")
    page = page_of(shop, _LESSON)
    assert '<div class="untranslated" lang="en" markdown>\n\nEverybody in ' in page
    assert "Todos en" not in page
    assert "todavía no está traducido" in page
    assert "Una lectura en el puerto" in page  # a block has a digest of its own


def test_a_stage_in_english_keeps_its_heading(shop: Shop, page_of: PageOf) -> None:
    step = "  - do: Enter the hardness."
    shop.change("procedures/set-the-cabinet.yaml", step, '  - do: "**The water:** enter it."')
    page = page_of(shop, _PROCEDURE)
    assert "### The water {#stage-1}" in page
    assert '<span lang="en">Enter it.</span>' in page


def test_links_lead_to_the_language_where_it_has_the_page_and_say_where_not(
    shop: Shop, page_of: PageOf
) -> None:
    lesson = page_of(shop, _LESSON)
    assert "(../../equipment/kitchen-cabinet.md) (en inglés)" in lesson
    procedure = page_of(shop, _PROCEDURE)
    assert "</span> (en inglés)](../../faults/crushed-hose.md)" in procedure
    assert "[La fuente y su dureza](../learn/the-spring.md)" in procedure


def test_a_form_speaks_the_language_and_marks_what_it_says_in_english(
    shop: Shop, page_of: PageOf
) -> None:
    page = page_of(shop, _LESSON)
    assert "Pruebe con sus propios números" in page
    assert "muy dura" in page
    assert '<option value="immediate meter"' in page  # what is sent stays the calculator's word


def test_only_languages_with_pages_get_any(shop: Shop, page_of: PageOf) -> None:
    (shop.docs / LESSON).unlink()
    (shop.docs / PROCEDURE).unlink()
    from build_tools.content.values import Values
    from build_tools.language.pages import language_sites

    assert list(language_sites(shop.handbook, Values(shop.handbook), None, "")) == []
