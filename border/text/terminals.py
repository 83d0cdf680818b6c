"""Words become terminals: the longest phrase of the vocabulary that fits, each time.

What stands together as one thing (`ch-5 space`, `with ch 2 between`) is put together in
`shaping/`.
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct
from msgspec.structs import replace

from border.text.distances import DISTANCE, behind_distance
from border.text.numbers import number_at, ordinal_at, words_that_count
from border.text.phrases import longest
from border.text.tree import Kind
from border.text.vocabulary import Entry, Names, vocabulary, ways_from
from border.text.words import Sort, Word

_MARKS = {
    ",": ("SEP", ""),
    ";": ("SEP", "hard"),
    ".": ("SEP", "hard"),
    ":": ("SEP", "hard"),
    "—": ("SEP", "hard"),
    "-": ("SEP", "hard"),
    "(": ("LP", ""),
    "[": ("LP", ""),
    "{": ("LP", ""),
    ")": ("RP", ""),
    "]": ("RP", ""),
    "}": ("RP", ""),
    "*": ("STAR", ""),
}

_PRINTED = frozenset(
    "+\u2020\u2021\u00a7\u00b6\u2715\u2716\u2717\u2718\u2042\u2051\u2605\u2606\u271d\u2720\u25ca\u2022"
)
"""Marks that books print round a repeat, besides stars and crosses."""


_WRITTEN_OUT = ("treble", "double", "single", "half")


class Terminal(Struct, frozen=True):
    """A word of the grammar, as it stands in the text at [start, end).

    `name`: a stitch, ending or modifier; `hard` on a separator that ends a
    list. `number`: of figures, ordinals (-1: last), times and all sizes.
    `glued`: a hyphen ties it to the one before. `many`: a plural. `chain`: it
    speaks of chains. `short`: an abbreviation. `capital`: it begins with one.
    """

    type: str
    text: str
    start: int
    end: int
    name: str = ""
    number: int = 0
    kind: Kind | None = None
    glued: bool = False
    many: bool = False
    chain: bool = False
    short: bool = False
    capital: bool = False


def terminal_at(words: Sequence[Word], at: int, names: Names) -> tuple[Terminal, int]:
    """The terminal that begins at a word, and the place behind it."""
    word = words[at]
    if word.sort is Sort.QUOTED:
        return _terminal("QUOTED", words, at, at + 1), at + 1
    if word.sort is Sort.MARK:
        type_, name = _MARKS.get(word.text, ("", ""))
        if type_:
            return _terminal(type_, words, at, at + 1, name=name), at + 1
        if word.text in _PRINTED:
            return _terminal("MARK", words, at, at + 1), at + 1
        if word.text not in ("\u00d7", "="):
            return _terminal("UNKNOWN", words, at, at + 1), at + 1
    if (end := behind_distance(words, at, names)) > at:
        return _terminal("REMARK", words, at, end, name=DISTANCE), end
    colours = vocabulary().colours
    opens = word.text in colours["opens"]
    if word.sort is not Sort.NUMBER and not opens and at + 1 < len(words):  # `Second colour.`
        opens = words[at + 1].text in colours["colour"] and ordinal_at(words, at) is not None
    if opens and (end := behind_colour(words, at)) > at:
        return _terminal("COLOUR", words, at, end, name=_with_colour(words[at:end])), end
    entry, end = longest(words, at, ways_from(word.text))
    stitch, stitch_end = longest(words, at, names.phrases)
    made_of = entry is not None and entry.terminal == "MADEOF"
    if made_of and (stitch is not None or number_at(words, end) is None):
        entry, end = longest(words[: end - 1], at, ways_from(word.text))  # `shell of last row`
    counts = word.sort is not Sort.WORD or word.text in words_that_count()
    ordinal = ordinal_at(words, at) if counts else None
    number = number_at(words, at) if counts else None
    times = vocabulary().times.get(word.text)
    if stitch is not None and stitch_end >= end:
        named = _from_entry(stitch, words, at, stitch_end)
        # A name that the text itself gives: `sdc.`, `lt.`, `treb.`
        letters = not any(vowel in named.text for vowel in "aeiouy")
        cut = any(full.startswith(named.text) and full != named.text for full in _WRITTEN_OUT)
        return replace(named, short=named.short or letters or cut), stitch_end
    if entry is not None and end > max(ordinal[1] if ordinal else 0, number[1] if number else 0):
        return _from_entry(entry, words, at, end), end
    if ordinal is not None and (number is None or ordinal[1] > number[1]):
        return _terminal("ORD", words, at, ordinal[1], number=ordinal[0]), ordinal[1]
    if number is not None:
        return _terminal("NUM", words, at, number[1], number=number[0]), number[1]
    if times is not None:
        return _terminal("TIMES", words, at, at + 1, number=times), at + 1
    if word.text in ("x", "\u00d7"):
        return _terminal("CROSS", words, at, at + 1), at + 1
    return _terminal("UNKNOWN", words, at, at + 1), at + 1


def _with_colour(words: Sequence[Word]) -> str:
    """`White wool.`, `Take the white wool` as the step says it: `with white wool`."""
    said = [word.text for word in words]
    if said[0] in vocabulary().colours["by"]:
        return " ".join([said[0] if said[0] in ("with", "in") else "with", *said[1:]])
    return " ".join(["with", *said])


def behind_colour(words: Sequence[Word], at: int) -> int:
    """The place behind `with the darkest scarlet wool`, or `at` where no colour stands."""
    colours, end = vocabulary().colours, at
    if words[end].text in colours["by"]:
        end += 1
    if end < len(words) and words[end].text == "the":
        end += 1
    while end < len(words) and (words[end].text in colours["before"] or ordinal_at(words, end)):
        end += 1
    behind = end
    while behind < len(words) and words[behind].text in colours["colour"]:
        behind += 1
        of = behind + 1 < len(words) and words[behind].text == "of"  # `the darkest shade of red`
        behind += of and words[behind + 1].text in colours["colour"]
    if behind == end:  # `dark wool` has no colour of its own
        shaded = end > at and words[end - 1].text in colours["before"]
        shaded = shaded or (end == at + 2 and words[end - 1].text == "the")  # `with the silk`
        material = end < len(words) and words[end].text in colours["behind"]
        return end + 1 if shaded and material else at
    return behind + (behind < len(words) and words[behind].text in colours["behind"])


def _from_entry(entry: Entry, words: Sequence[Word], at: int, end: int) -> Terminal:
    type_, name = entry.terminal, entry.name
    if type_ in ("SOFT", "HARD"):
        type_, name = "SEP", type_.lower() if type_ == "HARD" else ""
    terminal = _terminal(type_, words, at, end, name=name)
    if type_ == "KIND":
        kind = Kind(entry.name, entry.number or None)
        terminal = replace(terminal, kind=kind, many=entry.many, chain=entry.chain)
    return terminal


def _terminal(
    type_: str, words: Sequence[Word], at: int, end: int, name: str = "", number: int = 0
) -> Terminal:
    first, last = words[at], words[end - 1]
    text = first.text
    if end > at + 1:
        text = " ".join(word.text for word in words[at:end] if word.text != ".")
    short = last.text in vocabulary().short
    return Terminal(
        type_,
        text,
        first.start,
        last.end,
        name,
        number,
        None,
        first.glued,
        short=short,
        capital=first.capital,
    )
