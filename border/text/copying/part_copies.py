"""Rows that copy a part of another, as words: `…, finish as the 3rd row`, `as the 2nd to the end of
the shell; then …`, `begin as the 2nd row, then …`."""

from __future__ import annotations

from collections.abc import Sequence
from enum import Enum, auto

from msgspec import Struct

from border.findings import Span
from border.text.framing.copies import CopyWords, behind_said, copy_at
from border.text.framing.copy_words import (
    SEPARATES,
    amount_at,
    noun_at,
    past_openings,
    past_separators,
)
from border.text.numbers import ordinal_at
from border.text.source import Source
from border.text.terminals import terminal_at
from border.text.vocabulary import Names, said_of_copies, vocabulary
from border.text.words import Sort, Word

_LONGEST = 24
"""No words that name a row to be copied are more."""

_THEN = (*SEPARATES, "then", "work")
_SHELLS = frozenset(
    f"{name}{s}" for name in ("shell", "fan", "scallop", "group") for s in ("", "s")
)


class How(Enum):
    """Which part of the other row is copied."""

    REST = auto()  # behind what is said here
    FROM_STAR = auto()
    HEAD = auto()  # before what is said here
    TO_STAR = auto()
    TO_STEP = auto()
    WHOLE = auto()
    BEHIND = auto()  # all of it, behind what is said here


class UpTo(Struct, frozen=True):
    """The step up to which a row is copied: a stitch, `shell` for what goes into one place, or
    `chains` of a number.

    `which`: 1 the first, 2 the second, -1 the last, 0 the only one. `within`: that step is
    copied, too; None where it is not said.
    """

    of: str
    which: int
    within: bool | None
    chains: int = 0


class PartCopy(Struct, frozen=True):
    """A row of its own steps and a part of another: [start, end) of its words say which.

    `own`: its own steps; for a rest the words behind are its endings. `turns`: as the copied row.
    """

    how: How
    copy: CopyWords
    own: Sequence[Word]
    behind: Sequence[Word]
    said: Sequence[Word]
    upto: UpTo | None = None
    turns: bool = True

    def span(self, source: Source) -> Span:
        """Where it says which part."""
        last = next(w for w in reversed(self.said) if w.text not in SEPARATES)
        return source.span(self.said[0].start, last.end)


def part_copy_at(words: Sequence[Word], names: Names) -> PartCopy | None:
    """The copy of a part that a row's body is, if it is one."""
    return _head(words, names) or _begun(words) or _rest(words, names)


def _rest(words: Sequence[Word], names: Names) -> PartCopy | None:
    """`…, finish as the 3rd row`, `…, then as the 2nd from the *`, `…, and work as in the 4th row
    to the end`."""
    openers = {phrase[0] for phrase in said_of_copies("finish")} | {"as", "like", "same"}
    for at in range(1, len(words)):
        if words[at].text not in openers or words[at - 1].text not in (*_THEN, "the"):
            continue
        opened = behind_said(words, at, "finish")
        copy = copy_at(words[opened : opened + _LONGEST])
        if copy is None or len(copy.rows) > 1 or copy.times > 1 or copy.file or not copy.sound:
            continue
        end = opened + copy.after
        if not copy.rows and not _names_row(words[opened:end]):
            continue  # `continue the same`, `finish as before`
        star = _behind_star(words, behind_said(words, end, "from"), end)
        own = _without_joiner(words[:at])
        then = {word.text for word in words[len(own) : at]} & {"then", "and", "work"}
        to = behind_said(words, end, "to")
        whole = behind_said(words, to, "row_end") if to > end and not star else to
        to_end = whole > to
        end = whole if to_end else end
        all_of_it = opened == at and not star and not to_end
        steps = any(word.sort is not Sort.MARK and word.text != "turn" for word in own)
        if (all_of_it and not (then and steps)) or not ends_here(words[star or end :], names):
            continue
        how = How.FROM_STAR if star else How.BEHIND if all_of_it else How.REST
        end = star or end
        return PartCopy(how, copy, own, words[end:], words[at:end])
    return None


def _begun(words: Sequence[Word]) -> PartCopy | None:
    """`begin as the 2nd row, then …`."""
    opened = behind_said(words, 0, "begin")
    copy = copy_at(words[opened : opened + _LONGEST]) if opened else None
    if copy is None or len(copy.rows) != 1 or copy.times > 1 or copy.file or not copy.sound:
        return None
    end = opened + copy.after
    own = words[_past_then(words, end) :]
    return PartCopy(How.HEAD, copy, own, (), words[:end]) if own else None


def _head(words: Sequence[Word], names: Names) -> PartCopy | None:
    """`as the 2nd to the end of the shell; then …`, `like 2nd to the *, then …`, `as the 2nd,
    then …`."""
    copy = copy_at(words)
    if copy is None or len(copy.rows) > 1 or copy.times > 1 or copy.file or not copy.sound:
        return None
    at = past_separators(words, copy.after)
    to = behind_said(words, at, "to")
    upto: UpTo | None = None
    how, end, turns = How.WHOLE, copy.after, True
    if to > at:
        if star := _behind_star(words, to, to - 1):
            how, end = How.TO_STAR, star
        elif found := _upto(words, to, names):
            how, (upto, end) = How.TO_STEP, found
        elif (whole := behind_said(words, to, "row_end")) > to:
            end = whole
        else:
            return None
    elif (still := behind_said(words, opened := past_openings(words, at), "unturned")) > opened:
        end, turns = still, False
    at_end = past_openings(words, at) if to == at and turns else at
    behind = behind_said(words, at_end, "at_the_end")
    last = behind > at_end  # `like the 3rd; at the end, 7 chain, 1 sc in …`
    end = behind if last else end
    own_at = _past_then(words, end)
    said_then = last or any(word.text == "then" for word in words[end:own_at])
    own = words[own_at:]
    if not own or (own_at == end and not last) or (to == at and turns and not said_then):
        return None
    if how is How.WHOLE and ends_here(own, names):
        return None  # `as the 2nd, then turn` is all of it
    return PartCopy(how, copy, own, (), words[:end], upto, turns)


def _upto(words: Sequence[Word], at: int, names: Names) -> tuple[UpTo, int] | None:
    """`the end of the last shell`, `the 2nd treble inclusive`, and the place behind."""
    start = behind_said(words, at, "the_end_of")
    within = True if start > at else None
    start += start < len(words) and words[start].text == "the"
    which, start = ordinal_at(words, start) or (0, start)
    if start >= len(words):
        return None
    chains = 0
    if words[start].text in _SHELLS:
        of, end = "shell", start + 1
    elif (amount := amount_at(words, start, names)) and amount.of == "ch" and amount.number:
        of, end, chains = "chains", amount.after, amount.number
    elif (noun := noun_at(words, start, names)) and noun[0] not in ("ch", "picot"):
        of, end = noun[0], noun[2]
    else:
        return None
    if end < len(words) and words[end].text == "inclusive":
        within, end = True, end + 1
    return UpTo(of, which, within, chains), end


def _behind_star(words: Sequence[Word], at: int, before: int) -> int:
    """Behind `*`, `the *`; 0 where none stands here."""
    if at <= before or at >= len(words):
        return 0
    at += words[at].text == "the"
    return at + 1 if at < len(words) and words[at].text in ("*", "star", "asterisk") else 0


def _past_then(words: Sequence[Word], at: int) -> int:
    while at < len(words) and words[at].text in _THEN:
        at += 1
    return at


def _names_row(words: Sequence[Word]) -> bool:
    """Whether a row is named: `the last row`, `the preceding one`."""
    rows = vocabulary().rows
    return any(word.text in rows["before"] or word.text in rows["row"] for word in words)


def _without_joiner(words: Sequence[Word]) -> Sequence[Word]:
    """Words without the `, and then` that they end in; a full stop of an abbreviation stays."""
    end = len(words)
    while end and words[end - 1].text in (",", ";", "and", "then", "work", "the"):
        end -= 1
    return words[:end]


def ends_here(words: Sequence[Word], names: Names) -> bool:
    """Whether no step begins here: `, turn.`, `(48 dc)`."""
    at = past_separators(words, 0)
    if at >= len(words):
        return True
    terminal, _ = terminal_at(words, at, names)
    return terminal.type in ("ENDING", "LP")
