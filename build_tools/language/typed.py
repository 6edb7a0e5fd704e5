"""Quantities typed in another language: read as the English ones that they are."""

from __future__ import annotations

import re
from functools import cache

from build_tools.language.catalogs import calculated_words

#: Units as people write them out, by language; forms take them, and the check of texts finds them.
SPELLED = {
    "es": {
        "galón": "gallon", "galones": "gallons", "libra": "pound", "libras": "pounds",
        "onza": "ounce", "onzas": "ounces", "pie": "foot", "pies": "feet",
        "pulgada": "inch", "pulgadas": "inches", "segundo": "second", "segundos": "seconds",
        "minuto": "minute", "minutos": "minutes", "hora": "hour", "horas": "hours",
        "dia": "day", "dias": "days", "grano": "grain", "litro": "liter", "litros": "liters",
        "gramo": "gram", "gramos": "grams", "kilo": "kilo", "kilos": "kilos",
        "metro": "meter", "metros": "meters", "grado": "degree", "grados": "degrees",
        "voltio": "volt", "voltios": "volts", "taza": "cup", "por": "per",
        "por ciento": "percent", "ciento": "cent",
    },
}  # fmt: skip
#: Numbers in words, which stand before a unit: "dos minutos".
NUMBERS = {
    "es": {
        "dos": "two", "tres": "three", "cuatro": "four",
        "cinco": "five", "seis": "six", "siete": "seven", "ocho": "eight", "nueve": "nine",
        "diez": "ten", "once": "eleven", "doce": "twelve", "quince": "fifteen",
        "veinte": "twenty", "veinticinco": "twenty-five", "treinta": "thirty",
        "cuarenta": "forty", "cincuenta": "fifty", "sesenta": "sixty", "setenta": "seventy",
        "ochenta": "eighty", "noventa": "ninety", "cien": "hundred", "doscientos": "two hundred",
        "quinientos": "five hundred", "mil": "thousand", "medio": "half", "media": "half",
        "un tercio": "one third", "dos tercios": "two thirds", "un cuarto": "quarter",
        "tres cuartos": "three quarters", "un octavo": "one eighth", "una docena": "dozen",
    },
}  # fmt: skip


@cache
def typed_words(code: str) -> dict[str, str]:
    """Return the English unit for each word that people of a language type for one."""
    own = {word.lower(): unit for unit, word in calculated_words(code)["units"].items()}
    return {**SPELLED.get(code, {}), **own}


def in_english(text: str, code: str) -> str:
    """Return a text in which each quantity in words of a language stands in English ones.

    >>> in_english("Espere dos minutos, con 3 galones.", "es")
    'Espere two minutes, con 3 gallons.'
    """
    return _pattern(code).sub(lambda match: _english(match, code), text)


def _english(match: re.Match[str], code: str) -> str:
    number, gap, unit = match.groups()
    word = NUMBERS.get(code, {}).get(number.lower(), number)
    return f"{word}{gap}{typed_words(code)[unit.lower()]}"


@cache
def _pattern(code: str) -> re.Pattern[str]:
    numbers = "|".join(NUMBERS.get(code, {}))
    units = "|".join(sorted(map(re.escape, typed_words(code)), key=len, reverse=True))
    return re.compile(rf"(?<!\w)(\d[\d.,/]*|{numbers})(\s)(?:de\s)?({units})(?!\w)", re.IGNORECASE)
