"""Clauses of known words that only tell of the work, offered to be set apart where they make no
step: `making 36 in all`, `which is the middle one`, `until each of the nine has a dc above it`.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from border.text.phrases import longest
from border.text.source import Source
from border.text.vocabulary import names, phrases_from
from border.text.words import Sort, Word, shortened

_TELL = frozenset(
    {"making", "leaving", "having", "giving", "getting", "forming", "counting", "allowing", "being"}
    | {"taking", "bringing", "finishing", "passing", "keeping", "always", "never", "not", "thus"}
    | {"which", "that", "who", "there", "this", "these", "those", "you", "they", "it", "its"}
    | {"when", "if", "as", "so", "for", "to", "instead", "after", "where"}
)
"""A clause that begins so may tell."""
_LED = frozenset({"and", "but", "by", "with", "thus", "now", "then", "always"})
"""One of these may stand before that."""
_WORKS = frozenset({"repeat", "miss", "missing", "skip", "work", "turn", "join", "fasten", "begin"})
"""A clause with one of these works something; so does one that names the rows of a copy."""
_MAKES = frozenset({"making", "forming", "having", "taking"})
"""What is named behind these may be made, where it is no number in all."""
_STOPS = frozenset(",;:.()[]*—")


def told_clause(
    words: Sequence[Word], start: int, source: Source, first_fault: Callable[[list[Word]], int]
) -> str:
    """The clause round what is wrong at `start` as it is written, where it only tells and the row
    reads on without it; else nothing.

    `first_fault`: where words go wrong as steps; behind all the text where they do not.
    """
    at = next((n for n, word in enumerate(words) if word.start >= start), len(words) - 1)
    opens, behind = at, at
    while opens and not _parts(words, opens - 1, source):
        opens -= 1
    while behind < len(words) and not _parts(words, behind, source):
        behind += 1
    clause = words[opens:behind]
    if not _tells(clause):
        return ""
    marks = opens > 0 and behind < len(words) and words[opens - 1].text + words[behind].text
    if marks == "()":
        opens, behind = opens - 1, behind + 1
    kept = [*words[:opens], *words[behind:]]
    if opens and _doubled(kept, opens):
        del kept[opens - 1]
    if not kept or first_fault(kept) <= words[behind - 1].end:
        return ""
    said = source.text[words[opens].start : words[behind - 1].end]
    return shortened(said, 160)


def _doubled(kept: Sequence[Word], at: int) -> bool:
    """Whether a comma is left before another mark, or before nothing."""
    return kept[at - 1].text == "," and (at == len(kept) or kept[at].text in (",", ";", ".", ")"))


def _parts(words: Sequence[Word], at: int, source: Source) -> bool:
    """Whether a mark parts clauses here: not the full stop of `7 ch. after`, `1 d.c. in`."""
    if words[at].text not in _STOPS or words[at].sort is not Sort.MARK:
        return False
    follows = words[at + 1 : at + 2]
    if words[at].text != "." or not follows:
        return True
    return source.text[follows[0].start].isupper()


def _names_made(clause: Sequence[Word]) -> bool:
    """Whether stitches, chains or picots are named: `making 2 dc in the last`."""
    made = (names("us").phrases, names("uk").phrases)
    return any(
        any(longest(clause, n, known)[0] is not None for known in made)
        or any(
            entry.terminal in ("CH", "PICOT") and len(phrase) == 1
            for phrase, entry in phrases_from(word.text)
        )
        for n, word in enumerate(clause)
    )


def _tells(clause: Sequence[Word]) -> bool:
    """Whether a clause begins as one that tells, and names nothing to be worked."""
    said = [word.text for word in clause]
    led = bool(said) and said[0] in _LED
    counts = said[-2:] == ["in", "all"] or said[:3] == ["the", "same", "as"]
    if not counts and {*said[: 1 + led]} & _MAKES and _names_made(clause):
        return False
    over = "over" in said and bool({"pass", "passing"} & set(said))
    return (counts or bool({*said[: 1 + led]} & _TELL)) and not (over or _WORKS & set(said))
