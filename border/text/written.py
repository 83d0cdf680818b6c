"""The tree is written out as a border text again, in any terms.

Read again, it gives an equal tree: separators, brackets and numbers stand so
that nothing in it could be read two ways.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import assert_never

from border.text.steps import walk
from border.text.tree import (
    Arch,
    AtJoint,
    AtJoints,
    Border,
    Claim,
    Clause,
    Copy,
    Difference,
    Elsewhere,
    Exchanged,
    Headings,
    Moved,
    Over,
    OverMotifs,
    Place,
    Row,
    Scope,
    Skip,
    StartChain,
    Stitches,
    Text,
    Variation,
)
from border.text.vocabulary import has_name, name_of
from border.text.wording.stitch_names import meaning_of
from border.text.written_places import Overrides, write_kind, write_place
from border.text.written_steps import write_difference, write_item, write_list

__all__ = ["write_border", "write_item", "write_kind", "write_list", "write_place", "write_text"]
_WIDTH = 88
_NO_STITCHES = frozenset(
    {"st", "ch", "loop", "space", "group", "shell", "block", "run", "picot", "ring", "joint"}
)


def write_border(
    border: Border, terms: str | None = None, remarks: Mapping[int, str] | None = None
) -> str:
    """A border as a text; `terms` (`us`, `uk`, `early`) other than its own translate it.

    `remarks`: what is said, behind a `#`, on a line before the row that begins with a number.
    """
    own = border.headings.terms or "us"
    target = terms or own
    overrides = border.headings.overrides if target == own else ()
    overrides += _needed(border, target, overrides)
    lines = list(_headings(border.headings, terms or border.headings.terms, target, overrides))
    if lines:
        lines.append("")
    for row in border.rows:
        if remarks and row.numbers[0] in remarks:
            lines.append(f"# {remarks[row.numbers[0]]}")
        lines += _wrapped(_row(row, target, overrides), _claims(row.claims, target, overrides))
    return "\n".join(lines) + "\n"


def _needed(border: Border, terms: str, given: Overrides) -> Overrides:
    """Overrides for stitches that the terms, with those given, have no name for."""
    used: dict[str, None] = {}
    for row in border.rows:
        used |= dict.fromkeys(_stitches(row))
    missing = [s for s in used if s != "ch" and not has_name(s, terms, given)]
    return tuple((name_of(stitch, terms), stitch) for stitch in missing)


def _stitches(row: Row) -> Iterator[str]:
    texts = [row.body] if isinstance(row.body, Text) else []
    if isinstance(row.body, tuple):
        texts = [clause.text for clause in row.body]
    for text in texts:
        for item in walk(text.items):
            if isinstance(item, Stitches | Arch):
                yield item.stitch
            if isinstance(item, StartChain) and item.stands_for:
                yield item.stands_for
            place = getattr(item, "place", None)
            if isinstance(place, Place):
                yield from _placed(place)
            if isinstance(item, Skip) and item.target is not None:
                yield from _named(item.target.of.name, item.target.of.stitch)
    if isinstance(row.body, Copy):
        for one in row.body.differences:
            yield from _otherwise(one)
    for claim in row.claims:
        if claim.of is not None:
            yield from _named(claim.of.name, claim.of.stitch)


def _placed(place: Place) -> Iterator[str]:
    for target in place.targets:
        yield from _named(target.of.name, target.of.stitch)


def _otherwise(one: Variation) -> Iterator[str]:
    match one:
        case Moved(named, place):
            yield from _named(*(thing.of for thing in named))
            yield from _placed(place)
        case Exchanged(stitch, old):
            yield from (stitch, old)
        case Difference(of):
            yield from _named(of)


def _named(*names: str | None) -> Iterator[str]:
    return (name for name in names if name is not None and name not in _NO_STITCHES)


def _headings(
    headings: Headings, terms: str | None, target: str, overrides: Overrides
) -> Iterator[str]:
    if headings.name is not None:
        yield f"border: {headings.name}"
    if terms is not None:
        yield f"terms: {terms}"
    if headings.chains_count is not None:
        yield f"chains count as stitches: {'yes' if headings.chains_count else 'no'}"
    if headings.in_all is not None:
        yield f"repeats: {'in all' if headings.in_all else 'more'}"
    if headings.rows_repeated is not None:
        yield f"rows without a repeat: {'are repeated' if headings.rows_repeated else 'once'}"
    if headings.worked is not None:
        yield f"worked: {headings.worked.value}"
    if headings.bare is not None:
        yield f"bare stitches: {headings.bare.value}"
    if headings.multiple is not None:
        yield f"multiple of {headings.multiple.multiple} plus {headings.multiple.plus}"
    for word, stitch in overrides:
        yield f"{word} means {meaning_of(stitch, target)}"


def _wrapped(line: str, behind: str) -> list[str]:
    """A row on lines of bearable length, broken only between its steps; `behind`: its claims."""
    lines: list[str] = []
    current = ""
    for piece in [*_pieces(line), *([behind] if behind else [])]:
        if current and len(current) + 1 + len(piece) > _WIDTH:
            lines.append(current)
            current = f"    {piece}"
        else:
            current = f"{current} {piece}" if current else piece
    return [*lines, current]


def _pieces(line: str) -> list[str]:
    if '"' in line:
        return [line]
    pieces: list[str] = []
    for word in line.split(" "):
        if pieces and not pieces[-1].endswith((",", ";", ".")):
            pieces[-1] += f" {word}"
        else:
            pieces.append(word)
    return pieces


# --- rows -------------------------------------------------------------------------


def _row(row: Row, terms: str, overrides: Overrides) -> str:
    match row.body:
        case _ if row.foundation:
            body = "make a foundation chain"
        case Text() as text:
            body = write_text(text, terms, overrides)
        case Copy() as copy:
            body = _copy(copy, terms, overrides)
        case clauses:
            body = "; ".join(_clause(clause, terms, overrides) for clause in clauses)
    rounds = "round" if len(row.numbers) == 1 else "rounds"
    note = f" ({row.note})" if row.note else ""
    return f"{rounds} {_numbers(row.numbers)}{note}: {body}."


def _numbers(numbers: Sequence[int]) -> str:
    """`2`, `2 and 4`, `2-5`, `1, 3-6 and 9`."""
    parts: list[str] = []
    at = 0
    while at < len(numbers):
        end = at
        while end + 1 < len(numbers) and numbers[end + 1] == numbers[end] + 1:
            end += 1
        if end > at:
            parts.append(f"{numbers[at]}-{numbers[end]}")
        else:
            parts.append(str(numbers[at]))
        at = end + 1
    return " and ".join([", ".join(parts[:-1]), parts[-1]] if len(parts) > 1 else parts)


def _copy(copy: Copy, terms: str, overrides: Overrides) -> str:
    rounds = "round" if len(copy.rows) == 1 else "rounds"
    verb = "as" if copy.times == 1 else "repeat"
    written = f"{verb} {rounds} {_numbers(copy.rows)}"
    if copy.file is not None:
        written += f' of "{copy.file}"'
    if copy.times > 1:
        written += f" {copy.times} times"
    written += _differences(copy.differences, terms, overrides)
    return ", ".join([written, *(end.what.value for end in copy.ends)])


def _differences(differences: Sequence[Variation], terms: str, overrides: Overrides) -> str:
    """`, but with ch 7 instead of ch 5 and with 5 dc instead of 3 dc, omitting ch 2`."""
    written = ""
    made = False
    for one in differences:
        opens = " and with " if made else ", but with "
        made = isinstance(one, Exchanged) or (isinstance(one, Difference) and one.number > 0)
        written += f"{opens if made else ', '}{write_difference(one, terms, overrides)}"
    return written


def _clause(clause: Clause, terms: str, overrides: Overrides) -> str:
    return f"{write_scope(clause.scope)}: {write_text(clause.text, terms, overrides)}"


def write_scope(scope: Scope) -> str:
    """The head of a clause without its colon: `over each motif of front`."""
    match scope:
        case OverMotifs(None):
            return "over each motif"
        case OverMotifs(name):
            return f"over each motif of {name}"
        case Over(name):
            return f"over {name}"
        case Elsewhere(each_motif):
            return "elsewhere, over each motif" if each_motif else "elsewhere"
        case AtJoints():
            return "at each joint"
        case AtJoint(a, b):
            return f"at joint {a} | {b}"
        case _:
            assert_never(scope)


def _claims(claims: Sequence[Claim], terms: str, overrides: Overrides) -> str:
    """Claims in brackets; one that named a stitch twice would be read as steps."""
    brackets: list[list[Claim]] = []
    for claim in claims:
        if not brackets or any(claim.of == other.of for other in brackets[-1]):
            brackets.append([])
        brackets[-1].append(claim)
    said = (", ".join(_claim(c, terms, overrides) for c in bracket) for bracket in brackets)
    return " ".join(f"({bracket})" for bracket in said)


def _claim(claim: Claim, terms: str, overrides: Overrides) -> str:
    many = claim.count != 1
    if claim.of is None:
        return f"{claim.count} repeats"
    return f"{claim.count} {write_kind(claim.of, terms, many, overrides)}"


def write_text(text: Text, terms: str, overrides: Overrides = ()) -> str:
    """The steps of a row or a clause, without a full stop."""
    written = write_list(text.items, terms, overrides)
    if text.repeats:
        written += "; repeat"
    ends = [end.what.value for end in text.ends]
    if not written:
        return ", ".join(ends if ends else ["leave unworked"])
    return ", ".join([written, *ends])
