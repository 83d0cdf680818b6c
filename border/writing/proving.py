"""A row as it would be written, read back and worked: does it come to the same?"""

from __future__ import annotations

from msgspec.structs import replace

from border.findings import Finding, Severity
from border.text.readings import Round, read_rounds
from border.text.source import Source
from border.text.syntax import read_border
from border.text.tree import Border, Headings, Row
from border.text.written import write_border
from border.working.claims import check_claims
from border.working.cursor import TooLarge
from border.working.fabric import Fabric
from border.working.found import as_it_stands
from border.working.rounds import Pass
from border.writing.ways import Aim


def proved(row: Row, headings: Headings, terms: str, aim: Aim, *, beside: bool = False) -> bool:
    """Whether the row, written in these terms and read again, makes on the same fabric what the
    round made, closes where it closed, and raises no fault of its own.

    `beside`: its adjustments, and what it was found to be, still stand beside the text.
    """
    read = _read(row, headings, terms)
    if read is None:
        return False
    read = replace(read, number=aim.round.number, turning=aim.round.turning)
    try:
        given, found = (aim.adjustments, aim.found) if beside else ((), None)
        _, done, _ = as_it_stands(read, aim.below, given, found)
    except TooLarge:
        return False
    fabric = done.fabric(aim.below)
    times = [account.times for account in done.accounts.values()]
    return (
        _alike(fabric, aim.fabric)
        and done.closes == aim.done.closes
        and read.turns == aim.round.turns
        and _faults(done) <= _faults(aim.done)
        and not check_claims(read, fabric, times)
    )


def _read(row: Row, headings: Headings, terms: str) -> Round | None:
    """The row written by itself and read again, if it reads without a fault."""
    alone = Border(headings, (replace(row, numbers=(1,)),))
    border, told = read_border(Source("", write_border(alone, terms)))
    if border is None:
        return None
    reading, more = read_rounds(border, lambda source, name: None)
    if _wrong(told) or _wrong(more) or len(reading.rounds) != 1:
        return None
    return reading.rounds[0]


def _wrong(findings: tuple[Finding, ...]) -> bool:
    return any(f.severity is Severity.ERROR for f in findings)


def _faults(done: Pass) -> set[str]:
    codes = {f.code for f in done.findings if f.severity is Severity.ERROR}
    return codes | ({"chains-unclear"} if done.unclear else set())


def _alike(a: Fabric, b: Fabric) -> bool:
    """The same elements in the same sites at the same points."""
    return (a.tick, a.kinds, a.pos, a.into, a.rings, a.legs, a.covered) == (
        (b.tick, b.kinds, b.pos, b.into, b.rings, b.legs, b.covered)
    )
