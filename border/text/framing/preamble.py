"""The chain that a page speaks of before its first row: `Make a chain of 15. 1st row.--`.

Its words are read with those of row 1, as if they stood at its head.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby

from msgspec.structs import replace

from border.text.framing.headings import is_heading
from border.text.numbers import number_at
from border.text.words import Sort, Word

_OPENING = frozenset({"make", "work", "crochet", "commence", "begin", "start", "with", "on", "a"})
_CHAIN = frozenset({"chain", "chains", "ch", "foundation"})
_BEGINS = frozenset({"commence", "begin", "start", "foundation"})
_BIDS = frozenset({"work", "crochet", "make", "begin", "working"})
_RINGS = frozenset({"circle", "ring", "round"})
_TAIL = 7
"""So many words, from one that bids on, may lead to a row head: `and work in this circle the`."""
_LISTS = (",", "and")
_NEAR = 8
"""The chain is spoken of in so many words and marks."""


def of_chain(line: Sequence[Word]) -> bool:
    """Whether the words of a line before the first row speak of the chain to begin with."""
    line = _opening(line)
    dashed = [w.text for w in line[:1]] == ["--"]
    line = _opening(line[dashed:])  # as a remark it speaks of the same
    if not line:
        return False
    opened = line[0].text in _OPENING | _CHAIN or number_at(line, 0) is not None
    named = any(word.text in _CHAIN for word in line[:_NEAR])
    plain = all(word.text not in (":", "=") for word in line)
    return opened and named and plain and not is_heading(line)


def _opening(line: Sequence[Word]) -> Sequence[Word]:
    """The words without `for each star`, or `Foundation:`, before them."""
    closed = next((n for n, w in enumerate(line) if n and w.text == "--"), len(line))
    if [w.text for w in line[:1]] == ["--"] and len(line) > closed + 2:
        return _opening(line[closed + 1 :])  # `-- Edging --. Ch 40.`
    if [w.text for w in line[:1]] == ["."]:
        return _opening(line[1:])  # of a remark that is gone
    if [w.text for w in line[:1]] == ["foundation"]:
        at = next((n for n, w in enumerate(line) if n and w.sort is not Sort.MARK), 0)
        chains = any(number_at(line, n) for n in (at, at + 1))  # `ch 24`, `24 ch`
        return line[at:] if at > 1 or chains else line
    if [w.text for w in line[:1]] != ["for"]:
        return line
    start = next((n for n, w in enumerate(line[:_NEAR]) if w.text in _OPENING - {"a"}), 0)
    return line[start:]


def bids(words: Sequence[Word], at: int) -> int:
    """Where the words begin that bid to work the row whose head stands at a word, on its line:
    `and crochet the`, `work as follows:`; or `at`, where there are none."""
    end = behind_words(words, at + (at < len(words) and words[at].text == "the"))
    follows = end > 1 and words[end - 1].text == "follows" and words[end - 2].text == "as"
    if not follows and (end < at or end < 1 or words[end - 1].text != "the"):
        return at
    for n in range(end - 1, max(end - _TAIL, 0) - 1, -1):
        if words[n].line != words[end - 1].line or words[n].sort is Sort.MARK:
            return at
        if words[n].text in _BIDS:
            return n - (n > 0 and words[n - 1].text == "and")
    return at


def behind_words(words: Sequence[Word], at: int) -> int:
    """Before the marks of `as follows:--` that stand before a place; else the place."""
    end = at
    while end > 0 and words[end - 1].sort is Sort.MARK and words[end - 1].text in (":", "--", ","):
        end -= 1
    return end if end and words[end - 1].text == "follows" else at


def founds(line: Sequence[Word], before: Word) -> bool:
    """Whether a line that speaks of a chain, behind a figure, is the chain to begin with, and not
    more of its steps, as `ch 2, 2 dc` is; `before`: the last word of the figure so far."""
    line = _opening(line)
    if line[0].text in _BEGINS or [w.text for w in line[1:2]] == ["a"]:
        return True
    listed = any(w.text in _LISTS and number_at(line, n) for n, w in enumerate(line[:-1], 1))
    return not listed and not goes_on(before)


def goes_on(word: Word) -> bool:
    """Whether a list that has come to this word has more to come."""
    return word.text in (*_LISTS, "(", "[")


def split_chain(words: Sequence[Word], row: int) -> tuple[list[Word], list[Word]]:
    """The words before the first row without those of a chain, and these as a sentence
    of their own: `make`, where that is left out, and a stop. `row`: the line it begins on."""
    kept: list[Word] = []
    chain: list[Word] = []
    tail: list[Word]
    for _, said in groupby(words, lambda word: word.line):
        line = list(said)
        if not of_chain(line):
            kept += line
            continue
        line, tail = list(_opening(line)), []
        if line[0].line == row:
            line, tail = _without_bidding(line)
        first = line[0]
        if first.text in _BEGINS and [w.text for w in line[1:2]] == ["with"]:
            line = line[2:]  # before all rows it is no stitch that a row begins with
        if line[0].text == "a" or line[0].text not in _OPENING:
            chain.append(Word(Sort.WORD, "make", first.start, first.start, first.line))
        chain += line
        if line[-1].sort is not Sort.MARK:
            last = line[-1]
            chain.append(Word(Sort.MARK, ".", last.end, last.end, last.line))
        chain += tail
    return kept, chain


def _without_bidding(line: Sequence[Word]) -> tuple[list[Word], list[Word]]:
    """A line without the words at its end that bid to work the first row; and, of these, `in this
    circle`, into which it is worked."""
    the = replace(line[-1], text="the")
    start = bids(line, len(line)) if line[-1].text == "follows" else bids([*line, the], len(line))
    tail = list(line[start:])
    into = next(
        (n for n, w in enumerate(tail) if w.text in ("in", "into", "on", "round")), len(tail)
    )
    ring = next((n for n, w in enumerate(tail) if w.text in _RINGS), -1)
    kept = list(line[:start])
    while kept and kept[-1].text == ",":
        kept.pop()
    return kept, tail[into : ring + 1]
