"""What a copied row has otherwise: `but with 7 chain instead of 5, omitting the picots`."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct
from msgspec.structs import replace

from border.findings import Finding
from border.text.copies import behind_said
from border.text.numbers import number_at
from border.text.source import Source
from border.text.strangers import unknown_terms
from border.text.terminals import Terminal, terminal_at
from border.text.tree import Difference, Where
from border.text.vocabulary import Names
from border.text.words import LARGEST, Sort, Word, shortened

_SEPARATES = frozenset({",", ";", ".", "and", "&", "—", "-"})


class Behind(Struct, frozen=True):
    """What stands behind a copy and is read here, up to the word `after`; and what is told."""

    differences: tuple[Difference, ...]
    after: int
    findings: tuple[Finding, ...]


class _Amount(Struct, frozen=True):
    """So many of something, and the place behind: `5 dc`, `picots of 4`; parts may be unsaid."""

    of: str
    number: int | None
    after: int
    named: tuple[Terminal, ...] = ()


def read_differences(words: Sequence[Word], names: Names, source: Source, told: set[str]) -> Behind:
    """The differences, and the remarks on how long it goes on, with which words begin."""
    found: list[Difference] = []
    findings: list[Finding] = []
    after = 0
    while True:
        start = _past_separators(words, after)
        if (end := behind_said(words, start, "again")) > start:
            findings.append(_goes_on(words[start:end], source))
            after = end
            continue
        said = _change(words, start, names) or _omission(words, start, names, found)
        if said is None or not _ended(words, said[1].after, names):
            return Behind(tuple(found), after, tuple(findings))
        difference, amount = said
        span = source.span(words[start].start, words[amount.after - 1].end)
        found.append(replace(difference, span=span))
        findings += unknown_terms(amount.named, names, source, told)
        after = amount.after


def _change(words: Sequence[Word], at: int, names: Names) -> tuple[Difference, _Amount] | None:
    """`with 7 chain instead of 5`, `instead of 5 chain make 7`, `with 7 chain`."""
    opened = _past_openings(words, at)
    made = behind_said(words, opened, "with")
    if (old_at := behind_said(words, made, "instead")) > made:
        old = _amount(words, old_at, names)
        behind = _past_separators(words, old.after) if old else at
        new = _amount(words, behind_said(words, behind, "with"), names) if old else None
        return _changed(new, old, Where.ALL, new.after) if new and old else None
    new = _amount(words, made, names)
    if new is None or not new.of or not new.number:
        return None
    where, behind = _where(words, _past_dot(words, new.after))
    behind = behind_said(words, behind, "each")
    if (old_at := behind_said(words, behind, "instead")) > behind:
        old = _amount(words, old_at, names)
        if old is None:
            return None
        also, end = _where(words, old.after)
        end = behind_said(words, end, "each")
        return _changed(new, old, where if where is not Where.ALL else also, end)
    alone = behind_said(words, behind, "alone")
    if alone == behind and made == opened:
        return None  # `but 3 sc` may be one thing or another
    behind = alone if alone > behind else behind if where is not Where.ALL else new.after
    return _fitting(Difference(new.of, new.number, None, where), replace(new, after=behind))


def _changed(
    new: _Amount, old: _Amount, where: Where, after: int
) -> tuple[Difference, _Amount] | None:
    """So many instead of so many, the thing named once or twice."""
    of = new.of or old.of
    ring = of == "ring" and old.of in ("ring", "ch", "")
    if not (ring or {new.of, old.of} <= {of, ""}) or not new.number or not old.number:
        return None
    both = _Amount(of, new.number, after, (*new.named, *old.named))
    return _fitting(Difference(of, new.number, old.number, where), both)


def _omission(
    words: Sequence[Word], at: int, names: Names, before: Sequence[Difference]
) -> tuple[Difference, _Amount] | None:
    """`omitting the 2 chain`, and behind another one `and the picots`."""
    opened = _past_openings(words, at)
    omits = behind_said(words, opened, "omit")
    if omits == opened and not (before and before[-1].number == 0):
        return None
    left = _amount(words, omits, names)
    if left is None or not left.of or left.number == 0:
        return None
    where, after = _where(words, left.after)
    return _fitting(Difference(left.of, 0, left.number, where), replace(left, after=after))


def _ended(words: Sequence[Word], at: int, names: Names) -> bool:
    """Whether nothing stands here that would go with what is said: `… at the corners`."""
    if at >= len(words) or words[at].text in _SEPARATES:
        return True
    if any(behind_said(words, at, what) > at for what in ("opens", "with", "omit", "again")):
        return True
    return terminal_at(words, at, names)[0].type in ("LP", "ENDING", "REMARK")


def _fitting(one: Difference, amount: _Amount) -> tuple[Difference, _Amount] | None:
    """A difference, where what it is said of fits: chains are between, stitches in groups."""
    places = {Where.BETWEEN: one.of == "ch", Where.GROUPS: one.of not in ("ch", "picot", "ring")}
    too_large = max(one.number, one.instead_of or 0) > LARGEST
    return (one, amount) if places.get(one.where, True) and not too_large else None


def _amount(words: Sequence[Word], at: int, names: Names) -> _Amount | None:
    """`7 chain`, `ch 7`, `a chain of 7`, `3 treble`, `picots of 5 chain`, `the picots`, `5`."""
    at = behind_said(words, at, "the")
    number = number_at(words, at)
    behind = number[1] if number else at
    noun = _noun(words, behind, names)
    if noun is None:
        return _Amount("", number[0], behind) if number else None
    of, named, end = noun
    ring = of == "picot"
    size = _size(words, end, ring=ring)
    if size is not None and (number is None or (words[at].text == "a" and not ring)):
        if ring and (also := _noun(words, size[1], names)) and also[0] == "ch":
            size = size[0], also[2]
        return _Amount("ring" if ring else of, *size, (named,))
    return _Amount(of, number[0] if number else None, end, (named,))


def _noun(words: Sequence[Word], at: int, names: Names) -> tuple[str, Terminal, int] | None:
    """What a row can make, and the place behind: chains, picots, a stitch."""
    if at >= len(words) or words[at].sort is not Sort.WORD:
        return None
    terminal, end = terminal_at(words, at, names)
    of = {"CH": "ch", "PICOT": "picot", "STITCH": terminal.name}.get(terminal.type)
    return (of, terminal, end) if of else None


def _size(words: Sequence[Word], at: int, *, ring: bool) -> tuple[int, int] | None:
    """The number behind its noun, and the place behind: `ch 7`, `chain of 7`, `picots of 5`."""
    of = at < len(words) and words[at].text == "of"
    return number_at(words, at + of) if of or not ring else None


def _where(words: Sequence[Word], at: int) -> tuple[Where, int]:
    for where, what in ((Where.BETWEEN, "between"), (Where.GROUPS, "groups")):
        if (end := behind_said(words, at, what)) > at:
            return where, end
    return Where.ALL, at


def _past_openings(words: Sequence[Word], at: int) -> int:
    while (end := behind_said(words, at, "opens")) > at:
        at = end
    return at


def _past_separators(words: Sequence[Word], at: int) -> int:
    while at < len(words) and words[at].text in _SEPARATES:
        at += 1
    return at


def _past_dot(words: Sequence[Word], at: int) -> int:
    """Behind the full stop of an abbreviation inside a difference: `7 ch. instead of 5`."""
    dot = at + 1 < len(words) and words[at].text == "." and words[at - 1].end == words[at].start
    inside = dot and any(
        behind_said(words, at + 1, w) > at + 1 for w in ("instead", "alone", "between")
    )
    return at + 1 if inside else at


def _goes_on(words: Sequence[Word], source: Source) -> Finding:
    """`until the lace is long enough`: the rows are those that the head names."""
    span = source.span(words[0].start, words[-1].end)
    said = shortened(source.text[span.start : span.end])
    message = f'"{said}" is taken for a remark: the rows are worked as often as is said'
    help_ = f'write a line of its own for each time more, and set this apart: "-- {said} --"'
    return Finding("taken-as-remark", message, help_, span)


def otherwise(words: Sequence[Word], source: Source) -> Finding:
    """`as the last, but turn at the corner`: no copy, and no row either."""
    first = _past_separators(words, 0)
    span = source.span(words[first].start, words[-1].end)
    said = shortened(source.text[span.start : span.end])
    message = f'"{said}" makes this row another than the one that it copies'
    help_ = 'say what it makes otherwise, as in "with 7 chain instead of 5", "omitting the 2 chain"'
    help_ += ", or write the row out; what changes no count can be set apart: "
    help_ += f'"-- {said} --"'
    return Finding("exception-in-words", message, help_, span)
