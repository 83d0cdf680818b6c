"""Figures that a page explains in words: `A shell is 2 dc, 2 ch, 2 dc`, `To make a picot: ch 4, sl
st in 1st st`, `The Purl is worked thus--5 chain, …`. They are read as `shell = 2 dc, 2 ch, 2 dc`.
"""

from __future__ import annotations

from collections.abc import Sequence, Set
from functools import lru_cache
from itertools import groupby

from msgspec.structs import replace

from border.text.headings import is_heading
from border.text.numbers import number_at
from border.text.vocabulary import TERMS, names, phrases_from, plural
from border.text.words import Sort, Word

_BEFORE = (("to", "make"), ("to", "work"), ("to", "form"), ("for",), ("by",), ("making",))
_ARTICLES = frozenset({"a", "an", "the", "each", "every", "1", "one"})
_PARTS = frozenset({":", "--", "—", "-", ".", ","})
_SAYS = frozenset(
    {"is", "are", "meant", "made", "worked", "formed", "crocheted", "composed", "done", "thus"}
    | {"by", "of", "with", "in", "as", "follows", "this", "the", "following", "manner", "way", "so"}
    | {"consists", "signifies", "denotes", "working", "making", "work", "make", "crochet"}
)
_SAYS_SO = frozenset({"is", "are", "consists", "signifies", "denotes", "made", "worked", "thus"})
_NO_NAMES = frozenset(
    {"border", "edging", "edge", "foundation", "ring", "chain", "ch", "centre", "center", "row"}
    | {"round", "materials", "abbreviations", "terms", "multiple", "size", "turn", "begin"}
)
_STARTS = frozenset({"make", "commence", "begin", "start", "foundation"})
"""With these the chain to begin with is spoken of."""
_PICOTS = {"picot", "purl", "p"}
_LONGEST = 3
"""A figure's name has no more words."""


def figures_as_headings(words: Sequence[Word], rows: Sequence[Word]) -> list[Word]:
    """The words before the first row, with `=` between the name and the steps of such figures.

    On a line of more sentences each that explains a figure, and each behind it, has a line of
    its own; those lines are numbered below 0. `rows`: the words behind: what is only named and
    followed by steps, `Shell: 2 dc, 2 ch, 2 dc`, is a figure if it is spoken of there.
    """
    found: list[Word] = []
    more = 0
    used = {word.text for word in rows} | _PICOTS
    for _, said in groupby(words, lambda word: word.line):
        *before, last = _sentences(list(said), used)
        for sentence in before:
            more -= 1
            found += [replace(word, line=more) for word in _told(sentence, used)]
        found += _told(last, used)
    return found


def _sentences(line: list[Word], used: Set[str]) -> list[list[Word]]:
    """A line before and behind each full stop where one of the sentences explains a figure."""
    for n, word in enumerate(line[:-1], 1):
        if word.text != "." or n < 2:
            continue
        before, behind = line[:n], line[n:]
        explains = _with_equals(behind, used) != behind
        if explains or (_with_equals(before, used) != before and behind[0].text in _STARTS):
            return [before, *_sentences(behind, used)]
    return [line]


def _told(line: list[Word], used: Set[str]) -> list[Word]:
    if line[0].text == "foundation":  # `Foundation.--Ch 24`: no remark begins here
        return [line[0], *line[next((n for n, w in enumerate(line) if n and not _is_part(w)), 1) :]]
    return line if is_heading(line) or "=" in _texts(line) else _with_equals(line, used)


def _with_equals(line: list[Word], used: Set[str]) -> list[Word]:
    start = next((len(b) for b in _BEFORE if _texts(line[: len(b)]) == b), 0)
    bidden = start > 0
    start += start < len(line) and line[start].text in _ARTICLES
    end = start
    while end < len(line) and _may_name(line[end]) and line[end].text not in _SAYS_SO:
        end += 1
    called = line[start:end]
    steps = end
    while steps < len(line) and (_is_part(line[steps]) or line[steps].text in _SAYS):
        steps += 1
    said = {word.text for word in line[end:steps]}
    if not 0 < len(called) <= _LONGEST or not _are_steps(line[steps:]):
        return line
    if _NO_NAMES & {w.text for w in called} or _texts(called) in _stitches():
        return line
    spoken_of = {called[-1].text, plural(called[-1].text)} & used
    named = said & {":", "--", "—"} and spoken_of
    if not (said & _SAYS_SO or (bidden and said & _PARTS) or named):
        return line
    mark = line[end]
    return [*called, Word(Sort.MARK, "=", mark.start, mark.end, mark.line), *line[steps:]]


def _texts(words: Sequence[Word]) -> tuple[str, ...]:
    return tuple(word.text for word in words)


def _is_part(word: Word) -> bool:
    return word.text in _PARTS


def _may_name(word: Word) -> bool:
    return word.sort is Sort.WORD and word.text.replace("'", "").isalpha()


def _are_steps(line: Sequence[Word]) -> bool:
    """Whether words begin with stitches or chains and their number."""
    number = number_at(line, 0)
    if number is None:
        return len(line) > 1 and _is_chain(line[0]) and number_at(line, 1) is not None
    at = number[1]
    return at < len(line) and (_is_chain(line[at]) or _begins_stitch(line[at]))


def _is_chain(word: Word) -> bool:
    return any(entry.terminal in ("CH", "PICOT") for _, entry in phrases_from(word.text))


def _begins_stitch(word: Word) -> bool:
    return any(word.text == phrase[0] for phrase in _stitches())


@lru_cache(maxsize=1)
def _stitches() -> frozenset[tuple[str, ...]]:
    """The names of stitches in any terms, or in none."""
    every = [names(terms) for terms in TERMS]
    return frozenset(phrase for one in every for phrase in (*one.known, *one.elsewhere))
