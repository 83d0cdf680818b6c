"""What is said in other words comes to the same, or is asked: every row of the tables beside this
one is said again as other books say it, and may not come to something else in silence.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from functools import partial
from importlib import import_module
from pathlib import Path

import pytest
from phrases.said import On, said

NUMBERS = (
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
)
MADE = r"(?:treble|plain|chain|dc|tr|long)"
CHAINS = r"(?<![\w-])(\d+) chains?\b(?! (?:st|sp|loop|space))"
NOT_NAMED = r"(?<!the )(?<!next )(?<!first )(?<!last )(?<!each )(?<!of )"


def _in_words(row: str) -> str:
    return re.sub(
        r'(?<![\w/"])(\d+)(?![\w/])(?!\s*=)',
        lambda found: NUMBERS[int(found[1]) - 1] if 1 <= int(found[1]) <= 12 else found[0],
        row,
    )


def _between(mark: str, row: str) -> str:
    """`*…; repeat` as `x … x repeat`."""
    alone = row.startswith("*") and row.endswith("; repeat") and row.count("repeat") == 1
    return f"{mark} {row[1:-8].strip()} {mark} repeat" if alone else row


SAID: dict[str, Callable[[str], str]] = {
    "numbers in words": _in_words,
    "tr. for treble": partial(re.sub, r"(?<!a )(?<!\()\btrebles?\b", "tr."),
    "ch. for chain": partial(re.sub, r"(?<=\d )chains?\b", "ch."),
    "ch 5 for 5 chain": partial(re.sub, r"(?<!on the )" + CHAINS, r"ch \1"),
    "a chain of 5": partial(re.sub, NOT_NAMED + CHAINS, r"a chain of \1"),
    "upon for on": partial(re.sub, r"\bon (?=the|each|every|next)", "upon "),
    "following for next": partial(re.sub, r"\bnext\b(?! but)", "following"),
    "and repeat": partial(re.sub, r"; repeat\b", " and repeat"),
    "rep.": partial(re.sub, r"\brepeat\b", "rep."),
    "then": partial(re.sub, rf", (?=\d+ {MADE}\b)", ", then "),
    "and": partial(re.sub, rf"(?<!that is), (?=\d+ {MADE}\b)(?=[^,]*(?:;|$))", " and "),
    "&": partial(re.sub, r"\band\b", "&"),
    "skip for miss": partial(re.sub, r"\bmiss\b", "skip"),
    "a treble": partial(re.sub, r"(?<![\w/-])1 (?=treble|plain|chain|picot)", "a "),
    "between crosses": partial(_between, "x"),
    "between stars": partial(_between, "*"),
    "repeat all round": partial(re.sub, r"; repeat$", "; repeat all round"),
    "on several lines": partial(re.sub, ", ", ",\n    "),
    "with dashes": partial(re.sub, rf", (?=\d+ {MADE}\b)", " -- "),
    "work": lambda row: f"Work {row}" if re.match(rf"\d+ {MADE}", row) else row,
    "in capitals": str.upper,
}
"""A name, and how a row is said otherwise."""

SILENT = {
    # of a list before a place, `then` ends it: what stands before has its place by other words
    "1 plain, in the loop, then 7 treble; repeat",
    "*1 plain, then 3 treble with a purl between each, then 1 plain, in loop; repeat",
    "*miss 1 loop, then 3 dc, 2 ch, then 3 dc in next loop for a shell, miss 1 loop; repeat",
    "1 treble on plain, then 2 chain and 1 treble three times, then 5 chain; repeat",
    "1 treble, then 1 chain, then 1 treble in first 3 ch, *1 treble, then 1 chain, "
    "then 1 treble in next 3 ch; repeat",
    # behind `then` the chains before an `each` are made once
    "*1 plain in next loop, then 3 chain, then 1 plain in each of the other 3 loops; repeat",
    "* 1 dc in dc, 2 ch, then 1 dc in each of the 5 spaces of the shell, 2 ch; repeat from *",
    "*miss 1 loop, work 3 plain, then 2 chain, work 3 plain in next loop for a shell, miss 1 loop; repeat",
    # and behind it the chains lead on from all of a list
    "*in each of 3 loops 2 plain, then 5 chain; repeat",
    "*on each of the 5 treble 1 treble, then 5 chain; repeat",
    # a space by its chains, where `the 5 chain` may be five of them
    "*6 treble in ch 5 with ch 2 between each pair, 1 plain on plain; repeat",
    "*6 treble, in ch 5 with ch 2 between each pair, 1 plain on plain; repeat",
    "x 6 treble, in ch 5 with ch 2 between each pair, 1 plain on plain x repeat",
    "*5 treble on the ch 2 between the next 2 treble, separated each by 1 picot, ch 1; repeat",
}
"""Rows that come to something else in these words, as they should."""


def tables() -> Iterator[tuple[On, str, str]]:
    """(what it is worked on, the row, what it comes to) of every table of the other tests here."""
    for path in sorted(Path(__file__).parent.glob("*_test.py")):
        if path.name == Path(__file__).name:
            continue
        for test in vars(import_module(f"phrases.{path.stem}")).values():
            for mark in getattr(test, "pytestmark", ()):
                if mark.name == "parametrize" and mark.args[0] == ("on", "row", "comes_to"):
                    yield from (case.values for case in mark.args[1])


def _asked(comes_to: str) -> list[str]:
    return [part for part in comes_to.split("; ") if part.startswith("asked ")]


@pytest.mark.parametrize("words", SAID)
def test_in_other_words_a_row_comes_to_the_same_or_is_asked(words: str) -> None:
    tried = 0
    for on, row, comes_to in tables():
        otherwise = SAID[words](row)
        if otherwise in (row, *SILENT):
            continue
        tried += 1
        now = said(otherwise, on)
        assert now == comes_to or _asked(now), otherwise
    assert tried > 50
