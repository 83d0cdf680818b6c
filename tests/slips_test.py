"""Slips made at random in good texts: is the finding on the right line, and does it name the word?

Which slips count is said before any is made, so that none is left out for being missed:

- **a letter** of a word of a row changed, left out, doubled, or changed about with the
  next, so that the word is none that the language has in any terms (a slip from `2` to
  `3`, from `dc` to `sc`, gives another good text, and is none);
- **a word** without which a row says something else or nothing, left out or written
  twice: `repeat` where it goes back to a star, `in`, `into`, `skip`, `miss`, `times`;
- **a bracket or a star** left out or written twice. Where one of a pair is gone, the word
  to be named is as well the one that is left of it: the bracket's other half, the
  `repeat from *` of the star.

A slip after which the text still says the same is harmless, and is not counted; one
after which it says something else and nothing is told is counted, and missed.
"""

from __future__ import annotations

import random
from collections.abc import Callable, Iterator
from itertools import pairwise
from pathlib import Path
from typing import NamedTuple

import pytest

from border.findings import Finding, Span
from border.text.framing.rowheads import find_heads
from border.text.readings import Reading, read_rounds
from border.text.source import Source
from border.text.syntax import read_border
from border.text.tree import Text as Steps
from border.text.vocabulary import TERMS, vocabulary
from border.text.wording.strangers import _known_words
from border.text.words import Sort, Word, read_words
from border.text.written import write_text

TESTS = Path(__file__).parent
GOOD = [*TESTS.parent.glob("patterns/*.border"), *TESTS.glob("published/*.border")]
MADE = 300
"""So many slips of each sort are made."""

LETTERS = "abcdefghijklmnopqrstuvwxyz"
KEYWORDS = frozenset({"repeat", "in", "into", "skip", "miss", "times"})
MARKS = frozenset("()[]*")


class Text(NamedTuple):
    """A good text: its words that stand in rows, and where each row begins and ends."""

    source: Source
    reading: Reading
    words: tuple[Word, ...]
    rows: tuple[Span, ...]


class Slip(NamedTuple):
    """A text with a slip, in a row of it.

    `near`: the word it was made in, with those on either side; and what pairs with it.
    """

    good: Text
    text: str
    row: int
    near: tuple[Span, ...]


def read(source: Source) -> tuple[Reading | None, list[Finding]]:
    border, told = read_border(source)
    if border is None:
        return None, list(told)
    reading, more = read_rounds(border, lambda _, name: None)
    return reading, [*told, *more]


def good_texts() -> list[Text]:
    texts = []
    for path in sorted(GOOD):
        source = Source(path.name, path.read_text(encoding="utf-8"))
        reading, told = read(source)
        if reading is None or told:
            continue  # one that copies from other files, or as misprinted
        words = read_words(source)
        heads, _ = find_heads(words)
        starts = [words[head.at].start for head in heads] + [len(source.text)]
        rows = tuple(source.span(a, b) for a, b in pairwise(starts))
        inside = [w for h, end in zip(heads, [*(h.at for h in heads[1:]), len(words)], strict=True)
                  for w in words[h.body:end]]  # fmt: skip
        texts.append(Text(source, reading, tuple(inside), rows))
    return texts


TEXTS = good_texts()
KNOWN = frozenset(
    {word for terms in TERMS for word in _known_words(terms)}
    | {word for table in vocabulary().rows.values() for word in table}
    | {word for table in vocabulary().colours.values() for word in table}
    | {"over", "motif", "joint", "joints", "elsewhere", "corner", "underarm", *vocabulary().short}
)


def slipped(text: Text, at: int, new: str, row: int) -> Slip:
    """The text with one word as `new`; what is near it lies in the slipped text."""
    word = text.words[at]
    made = text.source.text[: word.start] + new + text.source.text[word.end :]
    grown = len(new) - (word.end - word.start)
    before, behind = text.words[max(0, at - 1)], text.words[min(len(text.words) - 1, at + 1)]
    near = [Span(text.source.name, before.start, behind.end + grown)]
    if word.text in MARKS and (other := partner(text, at)) is not None:
        moved = grown if other.start > word.start else 0
        near.append(Span(text.source.name, other.start + moved, other.end + moved))
    return Slip(text, made, row, tuple(near))


def partner(text: Text, at: int) -> Word | None:
    """The other half of a bracket; of a star the `repeat` that goes back to it, or the star."""
    word = text.words[at]
    if word.text == "*":
        back = [
            n for n, w in enumerate(text.words) if w.text == "repeat" and n + 2 < len(text.words)
        ]
        if text.words[at - 1].text == "from":
            return text.words[at - 2]
        return next((text.words[n] for n in back if n > at), None)
    step = 1 if word.text in "([" else -1
    depth = 0
    for other in text.words[at::step]:
        depth += (other.text in tuple("([")) - (other.text in tuple(")]"))
        if depth == 0:
            return other
    return None


def row_of(text: Text, word: Word) -> int:
    return next(n for n, row in enumerate(text.rows) if row.start <= word.start < row.end)


def letter_slips(chance: random.Random) -> Iterator[Slip]:
    while True:
        text = chance.choice(TEXTS)
        at = chance.randrange(len(text.words))
        word = text.words[at]
        if word.sort is not Sort.WORD or len(word.text) < 2 or not word.text.isalpha():
            continue
        n = chance.randrange(len(word.text))
        a, letter, b = word.text[:n], word.text[n], word.text[n + 1 :]
        new = chance.choice(
            (a + chance.choice(LETTERS) + b, a + b, a + letter + letter + b, a + b[:1] + letter + b[1:])
        )  # fmt: skip
        if len(new) > 1 and new not in KNOWN:
            yield slipped(text, at, new, row_of(text, word))


def word_slips(which: frozenset[str]) -> Callable[[random.Random], Iterator[Slip]]:
    def slips(chance: random.Random) -> Iterator[Slip]:
        while True:
            text = chance.choice(TEXTS)
            at = chance.randrange(len(text.words))
            word = text.words[at]
            to_star = [w.text for w in text.words[at + 1 : at + 3]] == ["from", "*"]
            if word.text not in which or (word.text == "repeat" and not to_star):
                continue
            new = "" if chance.random() < 0.5 else f"{word.text} {word.text}"
            yield slipped(text, at, new, row_of(text, word))

    return slips


class Told(NamedTuple):
    """What is told of a slip: on a line of its row, and at the word or beside it."""

    line: bool
    word: bool


def told_of(slip: Slip) -> Told | None:
    """What is told first; None where the slip is harmless."""
    reading, told = read(Source(slip.good.source.name, slip.text))
    spans = [f.span for f in told if f.span is not None]
    if not spans:
        same = reading is not None and means(reading) == means(slip.good.reading)
        return None if same else Told(line=False, word=False)
    first, row = spans[0], slip.good.rows[slip.row]
    line = row.start <= first.start < row.end + len(slip.text) - len(slip.good.source.text)
    word = any(first.start < near.end and near.start < first.end for near in slip.near)
    return Told(line, word)


def means(reading: Reading) -> list[str]:
    """The rows written out, which a star that a bare repeat does without leaves as they are."""
    return [
        write_text(body, "us") if isinstance(body := round_.body, Steps) else repr(body)
        for round_ in reading.rounds
    ]


SORTS: dict[str, Callable[[random.Random], Iterator[Slip]]] = {
    "a letter": letter_slips,
    "a word": word_slips(KEYWORDS),
    "a bracket or star": word_slips(MARKS),
}


@pytest.mark.parametrize("sort", SORTS)
def test_of_ten_slips_nine_are_told_where_they_are(sort: str) -> None:
    slips = SORTS[sort](random.Random(20_461))
    told = [told for told in (told_of(next(slips)) for _ in range(MADE)) if told is not None]
    lines, words = sum(t.line for t in told), sum(t.word for t in told)
    print(f"{sort}: {len(told)} of {MADE} slips change the text; told in their row", end=" ")
    print(f"{lines / len(told):.1%}, at the word {words / len(told):.1%}")
    assert len(told) > MADE / 2
    assert lines / len(told) >= 0.9
    assert words / len(told) >= 0.9
