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
        if line[0].text not in _OPENING:
            first = line[0]
            chain.append(Word(Sort.WORD, "make", first.start, first.start, first.line))
        chain += line
        if line[-1].sort is not Sort.MARK:
            last = line[-1]
            chain.append(Word(Sort.MARK, ".", last.end, last.end, last.line))
    return kept, chain
