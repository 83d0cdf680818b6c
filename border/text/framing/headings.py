"""Headings: the `name: value` lines before row 1, claims of a multiple, and overrides."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import groupby
from typing import Any

from msgspec import Struct, field
from msgspec.structs import replace

from border.findings import Finding, Span
from border.text.numbers import number_at
from border.text.source import Source
from border.text.tree import Bare, Headings, Multiple, Worked
from border.text.vocabulary import TERMS, Entry, name_of, names, phrases_from, vocabulary
from border.text.words import LARGEST, Word, shortened

_VALUES: dict[str, tuple[str, dict[str, Any]]] = {
    "terms": ("terms", {terms: terms for terms in TERMS}),
    "chains count as stitches": ("chains_count", {"yes": True, "no": False}),
    "repeats": ("in_all", {"more": False, "in all": True}),
    "rows without a repeat": ("rows_repeated", {"once": False, "are repeated": True}),
    "worked": ("worked", {worked.value: worked for worked in Worked}),
    "bare stitches": ("bare", {bare.value: bare for bare in Bare}),
}
"""Heading -> the field of `Headings`, and what each value stands for."""

_NOUNS = ("KIND", "CH", "PICOT")
_CHAIN_SPACE = re.compile(r"ch(?:ain)? ([1-9][0-9]{0,3}) space")
_VERBS = ("CATCH",)
_NO_STITCH = {
    "chain": "ch",
    "ch": "ch",
    "picot": "picot",
    "st": "st",
    "space": "space",
    "group": "group",
    "shell": "shell",
    "block": "block",
}
"""What a word can mean that is no stitch: `loop means st`, `purl means picot`."""

_EXAMPLE = 'write headings as "terms: us", one on a line, before the first row'


class _Reading(Struct):
    """What has been read so far; `given` are the headings met, by name."""

    source: Source
    headings: Headings = field(default_factory=Headings)
    findings: list[Finding] = field(default_factory=list)
    given: set[str] = field(default_factory=set)
    overrides: list[tuple[str, str, Span]] = field(default_factory=list)

    def fault(self, span: Span, message: str, help_: str) -> None:
        self.findings.append(Finding("bad-heading", message, help_, span))


def read_headings(words: Sequence[Word], source: Source) -> tuple[Headings, tuple[Finding, ...]]:
    """The headings in the words before the first row."""
    reading = _Reading(source)
    unknown: list[Span] = []
    for _, line in groupby(words, lambda word: word.line):
        stranger = _read_line(reading, list(line))
        if stranger is not None:
            unknown.append(stranger)
    if unknown:
        _unknown_lines(reading, unknown)
    if "terms" not in reading.given:
        message = "the border does not say in which terms its stitches are named"
        help_ = 'write a heading "terms: us", "terms: uk" or "terms: early" before the first row'
        span = source.span(words[0].start, words[0].end) if words else source.span(0, 0)
        reading.findings.append(Finding("terms-missing", message, help_, span))
    _settle_overrides(reading)
    return reading.headings, tuple(reading.findings)


def is_heading(line: Sequence[Word]) -> bool:
    """Whether a line reads as a heading (asked where none should be)."""
    colon = next((i for i, word in enumerate(line) if word.text == ":"), 0)
    return _joined(line[:colon]) in ("border", *_VALUES) or bool(
        {"means", "multiple"} & {w.text for w in line}
    )


def _joined(words: Sequence[Word]) -> str:
    return " ".join(word.text for word in words if word.text != ".")


def _read_line(reading: _Reading, line: list[Word]) -> Span | None:
    """Read one line; the span of a line that is no heading at all."""
    span = reading.source.span(line[0].start, line[-1].end)
    texts = [word.text for word in line]
    colon = texts.index(":") if ":" in texts else 0
    name = _joined(line[:colon])
    if name in ("border", *_VALUES):
        if name in reading.given:
            reading.fault(span, f'the heading "{name}" is given twice', "leave one of them out")
        else:
            reading.given.add(name)
            _read_value(reading, name, line[colon + 1 :], span)
    elif "means" in texts[1:]:
        middle = texts.index("means", 1)
        reading.overrides.append((_joined(line[:middle]), _joined(line[middle + 1 :]), span))
    elif "multiple" in texts[:2]:
        _read_multiple(reading, line, span)
    else:
        return span
    return None


def _read_value(reading: _Reading, name: str, words: Sequence[Word], span: Span) -> None:
    text = reading.source.text[words[0].start : words[-1].end] if words else ""
    if name == "border":
        if not text:
            reading.fault(span, "the border has no name", 'write it behind: "border: Fern edge"')
        reading.headings = replace(reading.headings, name=text or None)
        return
    attribute, values = _VALUES[name]
    if _joined(words) in values:
        reading.headings = replace(reading.headings, **{attribute: values[_joined(words)]})
        return
    choices = " or ".join(f'"{name}: {value}"' for value in values)
    reading.fault(span, f'the heading "{name}" cannot be "{shortened(text)}"', f"write {choices}")


def _read_multiple(reading: _Reading, line: list[Word], span: Span) -> None:
    """`multiple of 10`, `a multiple of 10 plus 2`."""
    at = 1 + [word.text for word in line].index("multiple")
    while at < len(line) and line[at].text in (":", "of"):
        at += 1
    multiple, plus = number_at(line, at), 0
    at = multiple[1] if multiple else at
    if multiple and at < len(line) and line[at].text in ("plus", "+"):
        added = number_at(line, at + 1)
        multiple = multiple if added else None
        plus, at = added or (0, at)
    if at < len(line) and line[at].text == ".":
        at += 1
    if not multiple or at < len(line) or not 0 < multiple[0] <= LARGEST or plus > LARGEST:
        reading.fault(span, "this multiple cannot be read", 'write "multiple of 10 plus 2"')
    elif "multiple" in reading.given:
        reading.fault(span, "the multiple is given twice", "leave one of them out")
    else:
        reading.given.add("multiple")
        value = Multiple(multiple[0], plus, span=span)
        reading.headings = replace(reading.headings, multiple=value)


def _settle_overrides(reading: _Reading) -> None:
    """`treble means dc`: the stitch behind by its US name, or as `uk tr`."""
    terms = reading.headings.terms or "us"
    settled: dict[str, str] = {}
    places: dict[str, str] = {}
    for word, meaning, span in reading.overrides:
        stitch, doubtful = _meant(meaning, terms)
        taken = phrases_from(word.split(" ")[0])
        was = next((_is(e) for phrase, e in taken if phrase == tuple(word.split(" "))), None)
        free = _NOUNS if stitch not in vocabulary().stitches else _VERBS
        short = word == "sh" and stitch is not None  # a shell in most books, and an sc in some
        if was is not None and was not in (*free, "STRAY") and not short:
            help_ = 'override names of stitches, or say what a place is: "loop means st"'
            reading.fault(span, f'"{word}" has a meaning already that is no stitch', help_)
        elif not word or not all(part.replace("'", "").isalpha() for part in word.split(" ")):
            help_ = 'write the word as the text has it: "treble means dc"'
            reading.fault(span, "this override names no word", help_)
        elif stitch is None:
            here = ", ".join(name_of(s, "us") for s in vocabulary().stitches)
            help_ = (
                f'write one of {here}, as in "{word} means dc", or "{word} means uk tr"; '
                f"for what is no stitch one of {', '.join(n for n in _NO_STITCH if n != 'ch')}"
            )
            reading.fault(span, f'"{shortened(meaning)}" is no stitch', help_)
        elif (settled | places).get(word, stitch) != stitch:
            reading.fault(span, f'"{word}" is given two meanings', "leave one of them out")
        elif stitch in _NO_STITCH.values() or stitch.endswith(" space"):
            places[word] = stitch
        else:
            settled[word] = stitch
            if doubtful:
                message = f'"{meaning}" is taken here for the US {meaning}'
                help_ = f'write "{word} means us {meaning}" or "{word} means {terms} {meaning}"'
                reading.findings.append(Finding("override-by-us-name", message, help_, span))
    reading.headings = replace(
        reading.headings, overrides=tuple(settled.items()), places=tuple(places.items())
    )


def _is(entry: Entry) -> str:
    """What a word is already: `fasten` alone makes a stitch as often as it ends a row."""
    return "CATCH" if entry.name == "fasten off" else entry.terminal


def _meant(meaning: str, terms: str) -> tuple[str | None, bool]:
    """The stitch behind `means`: by its US name, or one that only the stated terms have.

    Second, whether the stated terms use that US name for another stitch. What is
    worked into, and chains and picots, can stand behind `means` too.
    """
    if meaning in _NO_STITCH:
        return _NO_STITCH[meaning], False
    if sized := _CHAIN_SPACE.fullmatch(meaning):
        return f"ch-{sized[1]} space", False
    first, _, rest = meaning.partition(" ")
    if first in TERMS and rest in _NO_STITCH:  # no terms have another name for it
        return _NO_STITCH[rest], False
    if first in TERMS and rest:
        return names(first).known.get(tuple(rest.split(" "))), False
    phrase = tuple(meaning.split(" "))
    own, us = names(terms).known.get(phrase), names("us").known.get(phrase)
    return us or own, us is not None and own not in (None, us)


def _unknown_lines(reading: _Reading, unknown: Sequence[Span]) -> None:
    """One finding for a line; a long stretch of strange lines is told once."""
    from difflib import get_close_matches

    text = reading.source.text
    if len(unknown) > 3:
        span = unknown[0].to(unknown[-1])
        lines = [str(reading.source.line_column(one.start)[0]) for one in unknown]
        shown = [*lines[:_LINES], *(["more"] if len(lines) > _LINES else [])]
        message = f"lines {', '.join(shown[:-1])} and {shown[-1]} are neither headings nor rows"
        help_ = f'begin rows as "round 1:", set remarks apart with #; {_EXAMPLE}'
        reading.fault(span, message, help_)
        return
    for span in unknown:
        line = text[span.start : span.end].lower()
        known = [*_VALUES, "border", "multiple of"]
        close = get_close_matches(line.partition(":")[0].strip()[:40], known)
        help_ = f'did you mean "{close[0]}:"? {_EXAMPLE}' if close else _apart(text, span)
        if line.startswith(("round", "row")) or line[0].isdigit():
            help_ = 'begin a row with its number and a colon: "round 1:"'
        message = "this is neither a heading nor the head of a row"
        reading.fault(span, message, help_)


_LINES = 8
"""So many of the lines that are told as one are named."""


def _apart(text: str, span: Span) -> str:
    """How to set a line apart that is a remark; one with `--` in it, by a mark before it."""
    said = shortened(text[span.start : span.end], 160)
    apart = "put a # before it" if "--" in said else f'"-- {said} --", or a # before it'
    return f"set a remark apart: {apart}; {_EXAMPLE}"
