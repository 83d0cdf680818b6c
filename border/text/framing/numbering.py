"""The rows of a border by their numbers: what each head begins, and where numbers are amiss."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import zip_longest

from msgspec import Struct

from border.findings import Finding
from border.text.framing.copies import rows_made
from border.text.framing.rowheads import Head
from border.text.numbers import LAST_ROW
from border.text.source import Source
from border.text.wording.foundations import other_edge
from border.text.words import Word

_OTHER_EDGE = re.compile(
    r"\b(?:other|opposite|second|upper|lower|top|bottom|outer|inner) (?:side|edge)"
    r"|\b(?:commencing|foundation) ch",
    re.IGNORECASE,
)
"""A head that says so may be along another edge than the row before."""


class Section(Struct, frozen=True):
    """A row as found: its numbers, ascending, its head's span, the words of its body.

    `note`: what its head says in brackets, and before its number, as it stands there. `base`: how
    many rows come before the first of its piece, `1st row of the heading`, as its numbers count.
    """

    numbers: tuple[int, ...]
    head: tuple[int, int]
    body: Sequence[Word]
    note: str = ""
    base: int = 0


def _without_rows_over_again(words: Sequence[Word], heads: Sequence[Head]) -> list[Head]:
    """The heads without a line `Repeat from the 2nd row for the length required.` of which the next
    one shows that it is no row: it has the number that comes behind the row before."""
    kept: list[Head] = []
    for head, following in zip_longest(heads, heads[1:]):
        before = max(kept[-1].numbers, default=0) if kept else 0
        copies = not head.numbers and head.at == head.body and words[head.at].text == "repeat"
        numbered = following is not None and following.numbers[:1] == (before + 1,)
        if not (copies and before and numbered):
            kept.append(head)
    return kept


def find_rows(
    words: Sequence[Word], heads: Sequence[Head], source: Source
) -> tuple[list[Section], tuple[Finding, ...]]:
    """The rows of a border with their numbers, and the faults of their numbering."""
    sections: list[Section] = []
    findings: list[Finding] = []
    highest = 0
    heads = _without_rows_over_again(words, heads)
    base = 0  # of the rows of a piece that has numbers of its own
    for head, following in zip_longest(heads, heads[1:]):
        end = following.at if following is not None else len(words)
        first, last = words[head.at], words[max(head.at, head.body - 1)]
        span = source.span(first.start, last.end)
        numbers = tuple(sorted(set(head.numbers))) if head.sound else ()
        if not head.sound:
            message = "the rounds that this head names cannot be counted out"
            help_ = f'name them upwards, from 1, as in "rounds 2-5:"; at most {LAST_ROW}'
            findings.append(Finding("not-understood", message, help_, span))
        piece = head.piece if head.piece != (0, 0) else head.lead
        anew = numbers[:1] == (1,) and highest > 0 and piece != (0, 0)
        goes_on = numbers[:1] in ((), (highest - base + 1,))
        base = highest if anew else base if goes_on else 0
        numbers = tuple(n + base for n in numbers) or (highest + 1,)
        body = words[head.body : end]
        note = _note(words, head, source)
        if note and all(word.text in _STOPS for word in body):
            said = words[slice(*head.note)]  # `3rd row (same as first).`
            body, note = [word for word in said if word.text not in _BRACKETS], ""
        if len(numbers) == 1 and (rows := rows_made(body)) > 1:
            # "round 4: repeat rounds 2 and 3 twice" is rounds 4 to 7
            numbers = tuple(
                range(numbers[0], max(numbers[0] + 1, min(numbers[0] + rows, LAST_ROW)))
            )
        highest = max(highest, *numbers)
        edge = _edge_named(words, head, source) if sections else []
        edge = edge or (words[piece[0] : piece[1]] if anew else [])
        if edge:
            findings.append(other_edge(source, edge[0].start, edge[-1].end, numbers[0]))
        sections.append(Section(numbers, (first.start, last.end), body, note, base))
    findings += _numbering(sections, source)
    return sections, tuple(findings)


_STOPS = frozenset(",.;")
_BRACKETS = frozenset("()[]")
_NOTED = 9
"""So many words and marks of a note, and no more, are read where it is written out."""


def _note(words: Sequence[Word], head: Head, source: Source) -> str:
    """What a head says besides its number."""
    lead, behind = (words[start:end] for start, end in (head.lead, head.note))
    if len(lead) + len(behind) >= _NOTED:
        behind = behind if not lead else []
    return ", ".join(text for text in (_written(lead, source), _written(behind, source)) if text)


def _edge_named(words: Sequence[Word], head: Head, source: Source) -> Sequence[Word]:
    """The words of a head that may name another edge than that of the row before."""
    if head.edge != (0, 0):
        return words[head.edge[0] : head.edge[1]]
    lead, behind = (words[start:end] for start, end in (head.lead, head.note))
    if lead and _OTHER_EDGE.search(_written(lead, source)):
        return lead
    named = _OTHER_EDGE.search(_written(behind, source))
    return words[head.at : head.body] if named else []


def _written(words: Sequence[Word], source: Source) -> str:
    if not words:
        return ""
    return " ".join(source.text[words[0].start : words[-1].end].split())


def _numbering(sections: Sequence[Section], source: Source) -> list[Finding]:
    findings = []
    given = {n for section in sections for n in section.numbers}
    seen: set[int] = set()
    latest = 0
    expected = 1
    for section in sections:
        span = source.span(*section.head)
        twice = sorted(seen.intersection(section.numbers))
        first = section.numbers[0]
        if twice:
            message = f"{_rounds(twice)} stood further up already"
            help_ = "give every round one row: number this one anew, or leave it out"
            findings.append(Finding("row-twice", message, help_, span, twice[0]))
        elif first < latest:
            message = f"round {first} stands behind round {latest}"
            help_ = f"move it up, before round {min(n for n in seen if n > first)}"
            findings.append(Finding("row-out-of-order", message, help_, span, first))
        missing = [n for n in range(expected, first) if n not in given]
        if missing:
            message = f"{_rounds(missing)} {'is' if len(missing) == 1 else 'are'} missing"
            help_ = f'write "round {missing[0]}:" before this, or number the rounds without gaps'
            findings.append(Finding("missing-row", message, help_, span, first))
        seen.update(section.numbers)
        latest = max(latest, first)
        while expected in seen or expected < first:
            expected += 1
    return findings + _inner_gaps(sections, source, expected, seen)


def _inner_gaps(
    sections: Sequence[Section], source: Source, expected: int, seen: set[int]
) -> list[Finding]:
    """Gaps inside what the heads name, as in `rounds 2 and 4:` with no round 3 behind."""
    missing = [n for n in range(expected, max(seen, default=0)) if n not in seen]
    if not missing:
        return []
    section = next(s for s in sections if s.numbers[-1] > missing[0])
    message = f"{_rounds(missing)} {'is' if len(missing) == 1 else 'are'} missing"
    help_ = f'write "round {missing[0]}:" too, or number the rounds without gaps'
    span = source.span(*section.head)
    return [Finding("missing-row", message, help_, span, section.numbers[0])]


def _rounds(numbers: Sequence[int]) -> str:
    if len(numbers) == 1:
        return f"round {numbers[0]}"
    if numbers[-1] - numbers[0] == len(numbers) - 1:
        return f"rounds {numbers[0]} to {numbers[-1]}"
    return "rounds " + ", ".join(map(str, numbers[:5])) + (" …" if len(numbers) > 5 else "")
