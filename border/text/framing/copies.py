"""Copies of rows: `as round 2`, `repeat rounds 2 and 3 twice`, `as rounds 1-2 of "FILE"`."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from border.text.numbers import number_at, row_list_at
from border.text.vocabulary import said_of_copies, vocabulary
from border.text.words import Sort, Word

_LONGEST = 12
"""No phrase behind a copy has more words."""

_BEFORE = frozenset(
    {"work", "worked", "is", "exactly", "just", "precisely", "again", "the", "same", "and", ","}
)


class CopyWords(Struct, frozen=True):
    """A copy as found: the rows once through, times over, a file; words [0, after) are its own.

    No rows: the `back` rows before, as in `same as last row`, `repeat these two rows`; `over`: so
    many are passed over between, as in `same as the last but one`.
    """

    rows: tuple[int, ...]
    times: int
    file: str | None
    after: int
    sound: bool
    back: int = 1
    over: int = 0

    @property
    def one(self) -> bool:
        """Whether it is one row of this text, once."""
        return not self.file and len(self.rows) < 2 and self.times == self.back == 1

    def only(self, number: int) -> int:
        """The one row that the row of a number copies."""
        return self.rows[0] if self.rows else number - 1 - self.over


def copy_at(words: Sequence[Word]) -> CopyWords | None:
    """The copy that a row's body is, if it is one."""
    at = 0
    while at < len(words) and words[at].text in _BEFORE:
        at += 1
    if (way := behind_said(words, at, "same_way")) > at:
        if _ends(words, way):
            return CopyWords((), 1, None, way, True)
        at = way
    said = at - (at > 0 and words[at - 1].text == ",")
    if said and words[said - 1].text == "same" and (said < at or _ends(words, at)):
        return CopyWords((), 1, None, at, True)
    if (once_more := _again_at(words, at)) is not None:
        return once_more
    if at >= len(words) or words[at].text not in ("as", "like", "repeat"):
        texts = [word.text for word in words[:at]]
        same = next((n for n in range(1, at) if texts[n - 1 : n + 1] == ["same", ","]), None)
        return CopyWords((), 1, None, same + 1, True) if same is not None else None
    repeats = words[at].text == "repeat"
    at += 1
    if words[at - 1].text == "as" and at < len(words) and words[at].text == "before":
        return CopyWords((), 1, None, at + 1, True)
    at = _past(words, at, ("from",) if repeats else ("for",))
    if at < len(words) and words[at].text == "in" and not repeats:
        at += 1
    rows: tuple[int, ...] = ()
    sound = True
    behind, back = _behind_these(words, at) if repeats else (None, 1)
    over = 0
    if behind is None:
        behind, over = _behind_row_before(words, at)
    if behind is None:
        listed = row_list_at(words, at)
        if listed is None or not (listed.named or listed.ordinal):
            return None
        rows, behind, sound = listed.numbers, listed.after, listed.sound
    behind = _past(words, behind, (",", "inclusive", ",", "alternately", ","))
    at, times = _times(words, behind)
    file = None
    if at + 1 < len(words) and words[at].text == "of" and words[at + 1].sort is Sort.QUOTED:
        file = words[at + 1].text
        at, again = _times(words, at + 2)
        times *= again
    return CopyWords(rows, times, file, at, sound and bool(rows or file is None), back, over)


def _again_at(words: Sequence[Word], at: int) -> CopyWords | None:
    """`Work the 2nd row again`, `2nd row over again`, `1st and 2nd rows once more`."""
    listed = row_list_at(words, at)
    if listed is None or not listed.named:
        return None
    texts = [word.text for word in words[listed.after : listed.after + 2]]
    behind = next((len(said) for said in _AGAIN if texts[: len(said)] == list(said)), 0)
    if not behind or not _ends(words, listed.after + behind):
        return None
    return CopyWords(listed.numbers, 1, None, listed.after + behind, listed.sound)


_AGAIN = (("again",), ("over", "again"), ("once", "more"), ("once", "again"))


def _behind_these(words: Sequence[Word], at: int) -> tuple[int | None, int]:
    """Behind `these two rows`, `the last 2 rows`, and how many they are."""
    these = at < len(words) and words[at].text in ("these", "those")
    behind = at + 1 if these else _past(words, at, ("the", "last"))
    number = number_at(words, behind) if behind > at and words[behind - 1].text != "the" else None
    count, end = number or (2 if these else 0, behind)
    row = end < len(words) and words[end].text in vocabulary().rows["row"]
    return (end + 1, count) if row and count else (None, 1)


def _behind_row_before(words: Sequence[Word], at: int) -> tuple[int | None, int]:
    """Behind `the last row`, `previous round`, `last row but one`, `row before the last`, and how
    many rows it passes over."""
    at = _past(words, at, ("the",))
    names = vocabulary().rows
    row = at < len(words) and words[at].text in names["row"]
    last = _past(words, at + 1, ("before", "the")) if row else at
    if (row and last < at + 2) or last >= len(words) or words[last].text not in names["before"]:
        return None, 0
    row = last + 1 < len(words) and words[last + 1].text in names["row"]
    end = last + 1 + row
    one = _past(words, end, ("but", "one"))
    if last > at or (one == end + 2 and _ends(words, one)):
        return (end if last > at else one), 1
    return (end, 0) if row or _ends(words, end) else (None, 0)


def _ends(words: Sequence[Word], at: int) -> bool:
    stops = at >= len(words) or words[at].text in (".", ";", ":", ",")
    return stops or begins_otherwise(words, at)


def begins_otherwise(words: Sequence[Word], at: int) -> bool:
    """Whether what a copy has otherwise may begin here: `but with`, `omitting`."""
    return any(behind_said(words, at, what) > at for what in ("opens", "with", "omit", "again"))


def behind_said(words: Sequence[Word], at: int, what: str) -> int:
    """Behind the longest phrase of a kind that stands here; the place itself if none does."""
    if at >= len(words):
        return at
    said = tuple(w.text for w in words[at : at + _LONGEST])
    return at + next((len(p) for p in said_of_copies(what) if said[: len(p)] == p), 0)


def _times(words: Sequence[Word], at: int) -> tuple[int, int]:
    """`twice`, `3 times`, `3 more times`, `3 times more`, and the place behind; else once."""
    if at < len(words) and words[at].text in vocabulary().times:
        value = vocabulary().times[words[at].text]
        return _past(words, at + 1, ("more",)), value
    number = number_at(words, at)
    if number is None:
        return at, 1
    value, behind = number
    end = _past(words, behind, ("more", "times", "time", "more"))
    return (end, max(value, 1)) if end > behind else (at, 1)


def _past(words: Sequence[Word], at: int, texts: Sequence[str]) -> int:
    for text in texts:
        if at < len(words) and words[at].text == text:
            at += 1
    return at


def rows_made(words: Sequence[Word]) -> int:
    """How many rows a body makes: those that it copies, or one."""
    copy = copy_at(words)
    return (len(copy.rows) or copy.back) * copy.times if copy is not None else 1
