"""Row heads: where each row of a border begins, and which rounds it is.

`round 1:`, `1st round.`, `2d row--`, `rounds 2 and 4:`, `last row:`, `edging:` at
the start of a line. A line that goes on from `as`, `repeat`, `of` or `and` is none.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import zip_longest

from msgspec import Struct

from border.findings import Finding
from border.text.copies import copy_at, rows_made
from border.text.numbers import LAST_ROW, row_list_at
from border.text.source import Source
from border.text.vocabulary import is_colour, vocabulary
from border.text.words import Sort, Word

_ENDED = frozenset({".", ")", "--", "\u2014", "*"})
_MARKS = frozenset({":", ".", ",", ";", "—", "--", "-"})


class Head(Struct, frozen=True):
    """A row head: words [at, body) of the text, and the numbers that it names.

    No numbers: `last row`, `edging`, which go on from the highest so far. Words
    [note[0], note[1]) say something of the row that is no step: a colour.
    """

    at: int
    body: int
    numbers: tuple[int, ...]
    sound: bool
    note: tuple[int, int] = (0, 0)


class Section(Struct, frozen=True):
    """A row as found: its numbers, ascending, its head's span, the words of its body.

    `note`: what its head says in brackets, as it stands there.
    """

    numbers: tuple[int, ...]
    head: tuple[int, int]
    body: Sequence[Word]
    note: str = ""


def find_heads(words: Sequence[Word]) -> list[Head]:
    """All row heads, in the order of the text."""
    heads: list[Head] = []
    goes_on = vocabulary().rows["goes_on"]
    coming = 1
    for at, word in enumerate(words):
        if at > 0 and words[at - 1].line == word.line:
            continue
        if heads and words[at - 1].text in goes_on:
            continue
        head = _head_at(words, at)
        if head is None and (not heads or words[at - 1].text in _ENDED):
            head = _bare_head(words, at, coming) or (_copy_alone(words, at) if heads else None)
        if head is not None:
            heads.append(head)
            coming = max(head.numbers, default=coming) + 1
    return heads


def _bare_head(words: Sequence[Word], at: int, coming: int) -> Head | None:
    """`1.`, `2nd.` at the start of a line: a head only where its number comes next."""
    listed = row_list_at(words, at)
    if listed is None or listed.named or listed.numbers != (coming,) or listed.after != at + 1:
        return None
    body = _past_mark(words, listed.after)
    if body is None or body == listed.after or words[listed.after].text not in (".", ":"):
        return None
    return Head(at, body, listed.numbers, True)


def _copy_alone(words: Sequence[Word], at: int) -> Head | None:
    """`Repeat these two rows.` on a line of its own: rows without a head."""
    alone = words[at].text == "repeat" and copy_at(words[at : at + 12]) is not None
    return Head(at, at, (), True) if alone else None


def _head_at(words: Sequence[Word], at: int) -> Head | None:
    rows = vocabulary().rows
    text = words[at].text if words[at].sort is Sort.WORD else ""
    first = at + 1 if text == "the" else at
    if text == "for" and at + 2 < len(words) and words[at + 1].text == "the":
        first = at + 2
    if first >= len(words):
        return None
    text = words[first].text
    if text in rows["coming"] and first + 1 < len(words) and words[first + 1].text in rows["row"]:
        body = _past_mark(words, first + 2)
        return Head(at, body, (), True) if body is not None else None
    if text in rows["alone"] and words[at].text != "for":
        body = _past_mark(words, first + 1)
        return Head(at, body, (), True) if body is not None and body > first + 1 else None
    listed = row_list_at(words, first)
    if listed is None:
        return None
    after = _past_and_last(words, listed.after)
    named = listed.named or after > listed.after
    note, after = _note(words, after)
    body = _past_mark(words, after)
    if body is not None and note == (0, 0):
        note, body = _aside(words, body)
    if named and text in rows["row"]:
        # With "round 2" in front, a forgotten colon does no harm.
        return Head(at, body or after, listed.numbers, listed.sound, note)
    if body is None or not listed.ordinal:
        return None
    if not named:
        marks = "".join(word.text for word in words[after:body])
        if marks in ("", ".", ",", ";", "-"):
            return None
    return Head(at, body, listed.numbers, listed.sound, note)


def _past_and_last(words: Sequence[Word], at: int) -> int:
    """Behind `and last row`, as in `6th and last round`."""
    rows = vocabulary().rows
    if at + 2 < len(words) and words[at].text == "and" and words[at + 1].text in rows["coming"]:
        return at + 3 if words[at + 2].text in rows["row"] else at
    return at


def _aside(words: Sequence[Word], at: int) -> tuple[tuple[int, int], int]:
    """`(Wrong side.)` behind the mark of a head, and the place behind it."""
    end = at + 1
    while end < len(words) and is_colour(words[end].text):
        end += 1
    behind = end + 1 if end < len(words) and words[end].text == "." else end
    opens = at < len(words) and words[at].text == "(" and end > at + 1
    if opens and behind < len(words) and words[behind].text == ")":
        return (at + 1, end), behind + 1
    return (0, 0), at


def _note(words: Sequence[Word], at: int) -> tuple[tuple[int, int], int]:
    """What a head says besides: `(lightest scarlet)`, `, white`; and the place behind it."""
    line = [n for n in range(at, min(at + 12, len(words))) if words[n].line == words[at - 1].line]
    if line and words[at].text == "(":
        end = next((n for n in line if words[n].text == ")"), None)
        behind = None if end is None else _past_mark(words, end + 1)
        colour = end is not None and any(is_colour(words[n].text) for n in range(at + 1, end))
        if end is not None and behind is not None and (behind > end + 1 or colour):
            return (at + 1, end), end + 1
    start = at + 1 if line and words[at].text == "," else at
    end = start
    while end in line and (is_colour(words[end].text) or words[end].text in ("and", "in", "with")):
        end += 1
    if end > start and end in line and words[end].text in (":", "—", "--", "."):
        return (start, end), end
    return (0, 0), at


def _past_mark(words: Sequence[Word], at: int) -> int | None:
    """Behind the mark that ends a head; None where neither a mark nor the line's end is."""
    if at >= len(words) or words[at].line != words[at - 1].line:
        return at
    if words[at].text not in _MARKS or words[at].sort is not Sort.MARK:
        return None
    behind = at + 1
    if behind < len(words) and words[behind].start == words[at].end:
        dotted = words[at].text == "." and words[behind].text in ("—", "--", "-")
        dashed = words[at].text in ("—", "--") and words[behind].text in (":", ".")
        behind += dotted or dashed
    return behind


def find_rows(
    words: Sequence[Word], heads: Sequence[Head], source: Source
) -> tuple[list[Section], tuple[Finding, ...]]:
    """The rows of a border with their numbers, and the faults of their numbering."""
    sections: list[Section] = []
    findings: list[Finding] = []
    highest = 0
    for head, following in zip_longest(heads, heads[1:]):
        end = following.at if following is not None else len(words)
        first, last = words[head.at], words[max(head.at, head.body - 1)]
        span = source.span(first.start, last.end)
        numbers = tuple(sorted(set(head.numbers))) if head.sound else ()
        if not head.sound:
            message = "the rounds that this head names cannot be counted out"
            help_ = f'name them upwards, from 1, as in "rounds 2-5:"; at most {LAST_ROW}'
            findings.append(Finding("not-understood", message, help_, span))
        numbers = numbers or (highest + 1,)
        body = words[head.body : end]
        if len(numbers) == 1 and (rows := rows_made(body)) > 1:
            # "round 4: repeat rounds 2 and 3 twice" is rounds 4 to 7
            numbers = tuple(range(numbers[0], numbers[0] + min(rows, LAST_ROW)))
        highest = max(highest, *numbers)
        note = _written(words[head.note[0] : head.note[1]], source)
        sections.append(Section(numbers, (first.start, last.end), body, note))
    findings += _numbering(sections, source)
    return sections, tuple(findings)


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
