"""The calculators' texts in another language, by a table from English texts and templates.

The calculators speak English. What they said is translated afterwards, where it is shown: the build
does it, and the page's worker, both through here. The table comes from a catalog; in its texts
names in braces stand for what a calculation puts in: "{shown} is below the limit of {limit}."
"""

import re

from calculators.quantities import KINDS

_PLACE = re.compile(r"\{(\w+)\}")
#: Where a text may be parted: after a sentence or a part of one, and before a number.
_PARTING = re.compile(r"(?<=[.!?:;,])\s+| (?=[−\d])")
#: A number, and with it the unit that may follow: at most four words.
_QUANTITY = re.compile(r"(?<![\w.,])([−-]?\d[\d.,:/]*)([ \u00a0])([^\W\d_]+(?:/[^\W\d_]+)?)")
_LETTERS = re.compile(r"[A-Za-zÀ-ÖØ-öø-ÿ]+")
SYMBOLS = {
    part for kind in KINDS.values() for unit in kind.units for part in _LETTERS.findall(unit)
} | {"am", "pm", "e", "ln"}
_IN_SVG = re.compile(r'(?<=>)[^<>]+(?=</text>|</tspan>|</title>)|(?<=aria-label=")[^"]*')


class Translator:
    """Translates what `calculators.run` and the pictures say.

    words: "texts", English text or template -> its translation, and "units", English words among
    the units -> the language's own ("days" -> "días"); "typed", what people type -> English.
    """

    def __init__(self, words):
        self._texts = words["texts"]
        self._units = words["units"]
        self._typed = words.get("typed", {})
        templates = [text for text in self._texts if _PLACE.search(text)]
        templates.sort(key=lambda text: (-len(_PLACE.sub("", text)), text))
        self._templates = [(_pattern(text), text) for text in templates]
        self._known = {}

    def text(self, text):
        """Return a text in the language, or None where the table lacks what it needs.

        >>> table = {"texts": {"{label} is missing.": "Falta: {label}.", "Time": "Tiempo"}}
        >>> translator = Translator({**table, "units": {"days": "días"}})
        >>> translator.text("Time is missing."), translator.text("3 days"), translator.text("Salt")
        ('Falta: Tiempo.', '3 días', None)
        """
        if text not in self._known:
            self._known[text] = self._found(text)
        return self._known[text]

    def _found(self, text):
        if text in self._texts:
            return self._texts[text]
        quantities = _QUANTITY.sub(self._quantity, text)
        if all(word in SYMBOLS or word in self._units.values() for word in _words(quantities)):
            return quantities
        for pattern, template in self._templates:
            match = pattern.fullmatch(text)
            found = match and self._filled(template, match)
            if found:
                return found
        return self._by_parts(text)

    def _quantity(self, match):
        number, space, unit = match.groups()
        return f"{number}{space}{self._units.get(unit, unit)}"

    def _filled(self, template, match):
        """Return the translation of a template, or None where one for what is put in is missing.

        Between quotes stands what somebody typed: that stays as it is.
        """
        put_in = {}
        for name, said in match.groupdict().items():
            typed = f"“{{{name[1:]}}}" in template
            put_in[name] = said if typed else self.text(said)
            if put_in[name] is None:
                return None
        return _PLACE.sub(lambda place: put_in[f"_{place[1]}"], self._texts[template])

    def _by_parts(self, text):
        """Return what is put together from parts that have their translations, one by one."""
        ends = [match.span() for match in _PARTING.finditer(text)]
        for start, end in reversed(ends):
            mark = text[start - 1] if text[start - 1] in ",;:" else ""
            first = self.text(text[: start - len(mark)])
            rest = first and self.text(text[end:])
            if rest:
                return f"{first}{mark}{text[start:end]}{rest}"
        return None

    def typed(self, text):
        """Return what somebody typed with its unit in English: "3 días" becomes "3 days"."""
        if not isinstance(text, str):
            return text
        return re.sub(r"[^\W\d_]+", lambda word: self._typed.get(word[0].lower(), word[0]), text)

    def result(self, result):
        """Return what `calculators.run` returned with its texts in the language.

        "english" lists the texts that stay in English, so that a page can mark them.
        """
        english = []

        def said(text):
            found = self.text(text)
            if found is None and text not in english:
                english.append(text)
            return text if found is None else found

        def named(entries):
            return {
                name: {key: said(it) if key in _SAID else it for key, it in entry.items()}
                for name, entry in entries.items()
            }

        return {
            **result,
            "inputs": named(result["inputs"]),
            "values": named(result["values"]),
            "workings": [
                {key: said(it) for key, it in step.items()} for step in result["workings"]
            ],
            "warnings": [said(one) for one in result["warnings"]],
            "problems": {name: said(one) for name, one in result["problems"].items()},
            "english": english,
        }

    def svg(self, picture):
        """Return a picture with its words in the language; one that lacks any is marked English."""
        whole = True

        def said(match):
            nonlocal whole
            found = self.text(match[0])
            whole = whole and found is not None
            return match[0] if found is None else found

        made = _IN_SVG.sub(said, picture)
        return made if whole else picture.replace("<svg ", '<svg lang="en" ', 1)


#: What of an input or a value a reader sees.
_SAID = ("label", "shown", "rounding")


def _words(text):
    return _LETTERS.findall(text)


def _pattern(template):
    """Return the pattern of what a template says."""
    pattern = ""
    known = set()
    for place, part in enumerate(_PLACE.split(template)):
        if place % 2 == 0:
            pattern += re.escape(part)
        else:
            pattern += f"(?P=_{part})" if part in known else f"(?P<_{part}>.*?)"
            known.add(part)
    return re.compile(pattern, re.DOTALL)
