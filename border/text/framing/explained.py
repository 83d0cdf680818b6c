"""Figures that a page explains in words: `A shell is 2 dc, 2 ch, 2 dc`, `To make a picot: ch 4, sl
st in 1st st`, `The Purl is worked thus--5 chain, …`. They are read as `shell = 2 dc, 2 ch, 2 dc`.
"""

from __future__ import annotations

from collections.abc import Sequence, Set
from functools import lru_cache
from itertools import groupby

from msgspec.structs import replace

from border.text.framing.figures import figure_forms
from border.text.framing.headings import is_heading
from border.text.numbers import number_at
from border.text.vocabulary import TERMS, names, phrases_from
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
_BIDS = frozenset({"make", "work", "crochet"})
_ENDS_NAME = _SAYS_SO | _BIDS | {"or"}
_NO_NAMES = frozenset(
    {"border", "edging", "edge", "foundation", "ring", "chain", "ch", "centre", "center", "row"}
    | {"round", "materials", "abbreviations", "terms", "multiple", "size", "turn", "begin"}
)
_STARTS = frozenset({"make", "commence", "begin", "start", "foundation"})
"""With these the chain to begin with is spoken of."""
_PICOTS = {"picot", "purl", "p"}
_FEW = 6
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
        sentences = _sentences(_steps_meant(list(said)), used)
        told = [line for one in sentences for line in _told(one, used)]
        for line in told[:-1]:
            more -= 1
            found += [replace(word, line=more) for word in line]
        found += told[-1]
    return found


def _steps_meant(line: list[Word]) -> list[Word]:
    """`p means picot of 5`, `shell means 2 dc, ch 2, 2 dc`: a figure, and no name for a stitch."""
    at = next((n for n, word in enumerate(line) if word.text == "means"), 0)
    meant = line[at + 1 :]
    while meant and meant[0].text in (*TERMS, "a", "an"):
        meant = meant[1:]
    picot = len(meant) > 1 and any(word.text in _PICOTS for word in meant)
    steps = any(word.number for word in meant) and meant[-1].text != "space"
    if not at or not (picot or steps):
        return line
    return [*line[:at], replace(line[at], text="=", sort=Sort.MARK), *meant]


def _sentences(line: list[Word], used: Set[str]) -> list[list[Word]]:
    """A line before and behind each full stop where one of the sentences explains a figure."""
    for n, word in enumerate(line[:-1], 1):
        if word.text != "." or n < 2:
            continue
        before, behind = line[:n], line[n:]
        begins = behind[0].text in _STARTS and _explained(before, used)
        if begins or _explained(behind, used):
            return [before, *_sentences(behind, used)]
    return [line]


def _told(line: list[Word], used: Set[str]) -> list[list[Word]]:
    """A line as it is, or one for each name of the figure that it explains."""
    if line[0].text == "foundation":  # `Foundation.--Ch 24`: no remark begins here
        behind = next((n for n, word in enumerate(line) if n and not _is_part(word)), 1)
        return [[line[0], *line[behind:]]]
    explained = None if is_heading(line) or "=" in _texts(line) else _explained(line, used)
    if explained is None:
        return [line]
    names, steps = explained
    mark = Word(Sort.MARK, "=", steps[0].start, steps[0].start, line[0].line)
    return [[*name, mark, *steps] for name in names]


def _explained(line: list[Word], used: Set[str]) -> tuple[list[list[Word]], list[Word]] | None:
    """The names of the figure that a line explains, and its steps."""
    start = next((len(b) for b in _BEFORE if _texts(line[: len(b)]) == b), 0)
    bidden = start > 0
    name, end = _name_at(line, start)
    alias, end = _alias_at(line, end)
    steps = end
    while steps < len(line) and (_is_part(line[steps]) or line[steps].text in _SAYS):
        steps += 1
    said = {word.text for word in line[end:steps]}
    called = [one for one in (name, alias) if one]
    if not 0 < len(name) <= _LONGEST or len(alias) > _LONGEST or not _are_steps(line[steps:]):
        return None
    if any(_NO_NAMES & set(_texts(one)) or _texts(one) in _stitches() for one in called):
        return None
    if alias and _texts(alias) in figure_forms(_texts(name)):
        called = [name]  # `shell (sh)`
    spoken_of = {form[-1] for one in called for form in figure_forms(_texts(one))} & used
    named = said & {":", "--", "—"} and spoken_of
    if not (said & _SAYS_SO or (bidden and said & (_PARTS | _BIDS)) or named):
        return None
    picots = [one for one in called if one[0].text in _PICOTS]
    return picots[:1] or called, line[steps:]


def _name_at(line: Sequence[Word], at: int) -> tuple[list[Word], int]:
    """The words of a name, in the singular, and the place behind them."""
    at += at < len(line) and line[at].text in _ARTICLES
    end = at
    while end < len(line) and _may_name(line[end]) and line[end].text not in _ENDS_NAME:
        end += 1
    name = list(line[at:end])
    if name and name[-1].text.endswith("ves"):
        name[-1] = replace(name[-1], text=f"{name[-1].text[:-3]}f")  # `the leaves are worked thus`
    return name, end


def _alias_at(line: Sequence[Word], at: int) -> tuple[list[Word], int]:
    """The other name of `shell (sh) is`, `P, or picot, is`, and the place behind it."""
    opens = at + (_texts(line[at : at + 1]) == (",",))
    if _texts(line[at : at + 1]) == ("(",):
        end = next((n for n in range(at, len(line)) if line[n].text == ")"), at)
        alias = [word for word in line[at + 1 : end] if word.text != "."]
        return (alias, end + 1) if alias and all(map(_may_name, alias)) else ([], at)
    return _name_at(line, opens + 1) if _texts(line[opens : opens + 1]) == ("or",) else ([], at)


def _texts(words: Sequence[Word]) -> tuple[str, ...]:
    return tuple(word.text for word in words)


def _is_part(word: Word) -> bool:
    return word.text in _PARTS


def _may_name(word: Word) -> bool:
    return word.sort is Sort.WORD and word.text.replace("'", "").isalpha()


def _are_steps(line: Sequence[Word]) -> bool:
    """Whether words begin with stitches or chains and their number."""
    line = [word for word in line[:_FEW] if word.text != "."]
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
