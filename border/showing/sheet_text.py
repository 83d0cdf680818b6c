"""The row sheet for the terminal, or for a printer that knows only text: [ ] is a box to tick."""

from __future__ import annotations

from collections.abc import Iterator
from textwrap import wrap

from border.showing.sheet import CARE, RUNNING, EdgeSheet, Sheet
from border.showing.sheet_mending import Mending
from border.showing.sheet_rounds import Box, RoundSheet

WIDTH = 78


def sheet_text(sheet: Sheet) -> str:
    """The whole sheet, 78 columns wide."""
    lines = [*_underlined(sheet.name, "="), "", *_facts(sheet.facts), "", *_wrapped(RUNNING)]
    for edge in sheet.edges:
        lines += ["", "", *_edge(edge)]
    lines += ["", "", *_mending(sheet.mending), "", *_wrapped(f"Hands and eyes. {CARE}")]
    return "\n".join(lines) + "\n"


def _wrapped(text: str, first: str = "", then: str | None = None) -> list[str]:
    then = " " * len(first) if then is None else then
    return wrap(text, WIDTH, initial_indent=first, subsequent_indent=then) or [first.rstrip()]


def _underlined(text: str, mark: str) -> list[str]:
    lines = _wrapped(text)
    return [*lines, mark * max(map(len, lines))]


def _facts(facts: tuple[tuple[str, str], ...]) -> Iterator[str]:
    for what, how in facts:
        yield from _wrapped(f"{what}: {how}", "  ", "      ")


def _edge(edge: EdgeSheet) -> Iterator[str]:
    yield from _underlined(f"{edge.name}: {edge.title}", "=")
    yield ""
    yield from _facts(edge.facts)
    yield ""
    yield "  begun on ____________________   finished on ____________________"
    yield ""
    for fault in edge.faults:
        yield from _wrapped(f"!!! {fault}", "  ", "      ")
    yield "  short words"
    yield from _facts(tuple((f"  {a.short}", a.full) for a in edge.abbreviations))
    for round_ in edge.rounds:
        yield ""
        yield from _round(round_)


def _round(round_: RoundSheet) -> Iterator[str]:
    worked = " (worked)" if round_.worked else ""
    yield from _underlined(f"Round {round_.number}{worked}", "-")
    yield from _wrapped(round_.row, "  | ", "  | ")
    if round_.read:
        yield from _wrapped(f"in full: {round_.read}", "  | ", "  | ")
    if not round_.closes:
        told = "; ".join(round_.faults)
        verb = "DID" if round_.worked else "DOES"
        yield from _wrapped(f"THIS ROUND {verb} NOT CLOSE: {told}", "  !!! ")
    for eased in round_.eased:
        yield from _wrapped(f"EASE IN: {eased}", "  !!! ")
    if round_.found:
        yield from _wrapped(f"found, and counted on from there: {round_.found}", "  ")
    opening = f" On that joint: {round_.opening}." if round_.opening else ""
    yield from _wrapped(f"Begins {round_.begins}.{opening}", "  ")
    for repeat in round_.repeats:
        yield from _wrapped(f"Repeat: {repeat}", "  ", "    ")
    tick = "[x]" if round_.worked else "[ ]"
    for run in round_.runs:
        if run.what:
            yield from _wrapped(f"{run.what}: {run.made} each", "  ", "    ")
        for box in run.boxes:
            yield from _box(box, tick, alone=not run.what)
    spaces = f"; {round_.spaces} spaces for the next round" if round_.spaces else ""
    yield from _wrapped(f"In all: {round_.total}{spaces}", "  ", "    ")
    if round_.tape:
        yield from _wrapped(f"With a tape, laid flat: {round_.tape}", "  ", "    ")
    yield from _wrapped(f"Thread: {round_.thread}", "  ", "    ")
    yield f"  {tick} round {round_.number} is worked   what I really got: ____________________"


def _box(box: Box, tick: str, alone: bool) -> Iterator[str]:
    part = f" ({box.part})" if box.part else ""
    words = f"{box.what}{part}: {box.made}; " if alone else f"{box.what}{part}; "
    for eased in box.eased:
        words += f"!!! EASE IN HERE: {eased} !!! "
    words += f"at {' | '.join(box.joint)}: " if box.joint else ""
    words += f"{box.so_far} so far"
    words += f"; on the joint {box.on}" if box.on else ""
    yield from _wrapped(words, f"    {tick} ")


def _mending(mending: Mending) -> Iterator[str]:
    yield from _underlined("Putting right", "=")
    for n, step in enumerate(mending.steps, 1):
        yield from _wrapped(step, f"  {n}. ")
    for edge in mending.edges:
        yield ""
        yield from _wrapped(f"{edge.name}. {edge.said}", "  ")
        yield from (f"      {line}" for line in edge.lines)
        for r in edge.rounds:
            yield from _wrapped(f"round {r.round}: {r.what} ({r.all_of})", "    ", "      ")
    yield ""
    yield from _wrapped(mending.closing, "  ")
