"""The chain that a page speaks of before its first row: `Make a chain of 15. 1st row.--`.

Its words are read with those of row 1, as if they stood at its head.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby

from border.text.headings import is_heading
from border.text.numbers import number_at
from border.text.words import Sort, Word

_OPENING = frozenset({"make", "work", "crochet", "commence", "begin", "start", "with", "on", "a"})
_CHAIN = frozenset({"chain", "chains", "ch", "foundation"})
_BEGINS = frozenset({"commence", "begin", "start", "foundation"})
_LISTS = (",", "and")
_NEAR = 8
"""The chain is spoken of in so many words and marks."""


def of_chain(line: Sequence[Word]) -> bool:
    """Whether the words of a line before the first row speak of the chain to begin with."""
    line = line[line[0].text == "--" :]  # as a remark it speaks of the same
    if not line:
        return False
    opened = line[0].text in _OPENING | _CHAIN or number_at(line, 0) is not None
    named = any(word.text in _CHAIN for word in line[:_NEAR])
    plain = all(word.text not in (":", "=") for word in line)
    return opened and named and plain and not is_heading(line)


def founds(line: Sequence[Word], before: Word) -> bool:
    """Whether a line that speaks of a chain, behind a figure, is the chain to begin with, and not
    more of its steps, as `ch 2, 2 dc` is; `before`: the last word of the figure so far."""
    if line[0].text in _BEGINS or [w.text for w in line[1:2]] == ["a"]:
        return True
    listed = any(w.text in _LISTS and number_at(line, n) for n, w in enumerate(line[:-1], 1))
    return not listed and not goes_on(before)


def goes_on(word: Word) -> bool:
    """Whether a list that has come to this word has more to come."""
    return word.text in (*_LISTS, "(", "[")


def split_chain(words: Sequence[Word]) -> tuple[list[Word], list[Word]]:
    """The words before the first row without those of a chain, and these as a sentence
    of their own: `make`, where that is left out, and a stop."""
    kept: list[Word] = []
    chain: list[Word] = []
    for _, said in groupby(words, lambda word: word.line):
        line = list(said)
        if not of_chain(line):
            kept += line
            continue
        first = line[0]
        if first.text in _BEGINS and [w.text for w in line[1:2]] == ["with"]:
            line = line[2:]  # before all rows it is no stitch that a row begins with
        if line[0].text == "a" or line[0].text not in _OPENING:
            chain.append(Word(Sort.WORD, "make", first.start, first.start, first.line))
        chain += line
        if line[-1].sort is not Sort.MARK:
            last = line[-1]
            chain.append(Word(Sort.MARK, ".", last.end, last.end, last.line))
    return kept, chain
