"""Numbers in words or figures, and the lists of rows that heads and copies name."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache

from msgspec import Struct

from border.text.vocabulary import vocabulary
from border.text.words import Sort, Word

LAST_ROW = 1_000
"""No border has more rows than this: a longer list of rows is not spelled out."""
_ROW_WORDS = 3
"""So many of `row`, `round` are passed side by side."""
_LINES = 2
"""Over so many lines a list of rows goes, since every line is looked at for one."""


def number_at(words: Sequence[Word], at: int) -> tuple[int, int] | None:
    """The number that begins at a word, and the place behind it: `3`, `twenty-four`."""
    if at >= len(words):
        return None
    if words[at].sort is Sort.NUMBER:
        return words[at].number, at + 1
    small = _below_hundred(words, at)
    value, after = small or (1, at)
    if _text(words, after) == "hundred" and value < 10:
        value, after = value * 100, after + 1
        behind = after + 1 if _text(words, after) == "and" else after
        more = _below_hundred(words, behind)
        if more is not None and _text(words, behind) not in ("a", "an"):
            return value + more[0], more[1]
        return value, after
    return small


@lru_cache(maxsize=1)
def words_that_count() -> frozenset[str]:
    """The words that a number, or an ordinal, can begin with."""
    table = vocabulary()
    return frozenset({*table.numbers, *table.ordinals, "hundred"})


def _text(words: Sequence[Word], at: int) -> str:
    if at < len(words) and words[at].sort in (Sort.WORD, Sort.MARK):
        return words[at].text
    return ""


def _below_hundred(words: Sequence[Word], at: int) -> tuple[int, int] | None:
    numbers = vocabulary().numbers
    value = numbers.get(_text(words, at), 100)
    if value >= 100:
        return None
    unit = numbers.get(_text(words, at + 1), 100)
    if value >= 20 and unit < 10 and _text(words, at + 1) not in ("a", "an"):
        return value + unit, at + 2
    return value, at + 1


def ordinal_at(words: Sequence[Word], at: int) -> tuple[int, int] | None:
    """The ordinal that begins at a word, and the place behind it: `2nd`, `last` (-1)."""
    if at >= len(words):
        return None
    if words[at].sort is Sort.ORDINAL:
        return words[at].number, at + 1
    ordinals, text = vocabulary().ordinals, _text(words, at)
    value = ordinals.get(text)
    if value is not None:
        return value, at + 1
    tens = vocabulary().numbers.get(text, 0)
    if not 20 <= tens < 100:
        return None
    unit = ordinals.get(_text(words, at + 1), 0)
    return (tens + unit, at + 2) if 0 < unit < 10 else None


class RowList(Struct, frozen=True):
    """Rows named in a text. `named`: the word row or round stands with them.

    `ordinal`: named as `2nd`. `after`: the place behind. `sound`: every range
    goes upwards and none is longer than a border can be.
    """

    numbers: tuple[int, ...]
    named: bool
    ordinal: bool
    after: int
    sound: bool


def row_list_at(words: Sequence[Word], at: int) -> RowList | None:
    """`round 2`, `rounds 2-5`, `2nd and 4th rows`, `2nd row and 3rd row`, `rounds 2, 4 to 6`."""
    numbers: list[int] = []
    named = ordinal = False
    sound = True
    after = at
    below = words[at].line + _LINES if at < len(words) else 0
    while at < len(words) and words[at].line < below:
        at, row_word = _past_row_words(words, at)
        first = _row_number(words, at)
        if first is None or (numbers and not _goes_on(words, after, first, ordinal)):
            break
        value, at, is_ordinal = first
        behind = _past_to(words, at)
        last = _row_number(words, behind) if behind is not None else None
        if last is not None and is_ordinal and not last[2]:
            last = None  # `same as 2nd row to the 7 chain`
        end = last[0] if last is not None else value
        at = last[1] if last is not None else at
        sound = sound and value <= end < value + LAST_ROW
        if len(numbers) <= LAST_ROW:
            numbers += range(value, min(max(value, end), value + LAST_ROW) + 1)
        at, trailing = _past_row_words(words, at + (is_ordinal and _abbreviated(words, at)))
        named, ordinal = named or row_word or trailing, ordinal or is_ordinal
        after = at
        at = _past_joiner(words, at)
        if at == after:
            break
    if not numbers:
        return None
    sound = sound and len(numbers) <= LAST_ROW and all(0 < n <= LAST_ROW for n in numbers)
    return RowList(tuple(numbers), named, ordinal, after, sound)


def _abbreviated(words: Sequence[Word], at: int) -> bool:
    """Whether a full stop stands here that is of the number: `1st. row`."""
    row = _text(words, at + 1) in vocabulary().rows["row"] and number_at(words, at + 2) is None
    return row and _text(words, at) == "." and words[at + 1].line == words[at - 1].line


def _goes_on(
    words: Sequence[Word], joiner: int, number: tuple[int, int, bool], ordinal: bool
) -> bool:
    """Whether a number behind a joiner is one more row: not so in `1st row, 2 dc`."""
    _, behind, is_ordinal = number
    if is_ordinal or _text(words, joiner) != "," or _text(words, joiner + 1) == "and":
        return is_ordinal or not ordinal
    return not ordinal and not _steps_begin(words, behind)


def _steps_begin(words: Sequence[Word], at: int) -> bool:
    """Whether a word stands here that could be what a number before it counts."""
    if at >= len(words) or words[at].sort is not Sort.WORD or number_at(words, at) is not None:
        return False
    rows = vocabulary().rows["row"]
    return words[at].text not in {"and", "to", *rows, *vocabulary().times}


def _past_row_words(words: Sequence[Word], at: int) -> tuple[int, bool]:
    start = at
    if _text(words, at) == "the":
        at += 1
        start = at
    while at - start < _ROW_WORDS and _text(words, at) in vocabulary().rows["row"]:
        at += 1
    return at, at > start


def _row_number(words: Sequence[Word], at: int) -> tuple[int, int, bool] | None:
    found = ordinal_at(words, at)
    if found is not None and found[0] > 0:
        return *found, True
    number = number_at(words, at)
    if number is None or _text(words, at) in ("a", "an"):
        return None
    if _text(words, number[1]) in ("more", "times", "time"):
        return None
    return *number, False


def _past_to(words: Sequence[Word], at: int) -> int | None:
    """Behind `-` or `to`, where a range of rows goes on; a hyphen may be tied to the figure."""
    while _text(words, at) in vocabulary().rows["row"]:
        at += 1
    if at < len(words) and words[at].glued:
        return at
    if _text(words, at) == "-":
        number = _row_number(words, at + 1)
        return at + 1 if number is not None and not _steps_begin(words, number[1]) else None
    if _text(words, at) != "to":
        return None
    return at + 2 if _text(words, at + 1) == "the" else at + 1


def _past_joiner(words: Sequence[Word], at: int) -> int:
    if _text(words, at) == ",":
        at += 1
    if _text(words, at) == "and":
        at += 1
    return at
