"""The rounds of a sheet as values: what to do run by run, and what stands at every joint."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from hashlib import sha256

from msgspec import Struct

from border.findings import Severity
from border.reckoning.counts import RepeatCount, RoundCount, Tally
from border.reckoning.measuring import Mark
from border.reckoning.running import Course, Joint, Stage, course
from border.showing.counted import Counted, Piece
from border.showing.folding import called, each_repeat, everything, series
from border.showing.sheet_words import is_copied, row_as_read, row_as_written, thread_in_words
from border.showing.tables import adjusted
from border.showing.tape_words import tape_in_words
from border.showing.telling import harmless
from border.text.amounts import often
from border.text.readings import Round
from border.working.found import in_words
from border.yoke.edges import Edge

MOST_BOXES = 240
"""Boxes to tick in one round; where it has more motifs, ten equal neighbours share one."""


class Box(Struct, frozen=True):
    """Something to tick: what is made over it, and what stands at the joint behind it.

    `joint` is empty where there is none; `on`: what stands on the joint, or nothing.
    `eased`: what is to be eased in here. `part`: why it is only a part of its motif.
    """

    what: str
    made: str
    so_far: str
    joint: tuple[str, ...] = ()
    on: str = ""
    eased: tuple[str, ...] = ()
    part: str = ""


class RunSheet(Struct, frozen=True):
    """Equal neighbours, `what` they are and what is `made` over each of them; or, where
    `what` is empty, neighbours that are each otherwise, and say so themselves."""

    what: str
    made: str
    boxes: tuple[Box, ...]


class RoundSheet(Struct, frozen=True):
    """One round. `row` as it is written, `read` written out where it copies another.

    `key`: the same as long as everything that is to be made in the round is the same.
    `worked`: it is worked already, `found`: and came out so. `faults`: why it does not
    close. `opening`: the joint that it begins on, with what stands there. `tape`: what it
    should measure, if that is known.
    """

    number: int
    key: str
    row: str
    read: str
    worked: bool
    found: str
    closes: bool
    faults: tuple[str, ...]
    begins: str
    opening: str
    repeats: tuple[str, ...]
    eased: tuple[str, ...]
    runs: tuple[RunSheet, ...]
    total: str
    spaces: int
    tape: str
    thread: str


def round_sheets(
    piece: Piece, counted: Counted, loops_before: tuple[int, ...], marks: Sequence[Mark]
) -> tuple[RoundSheet, ...]:
    """The rounds of a piece of work. `loops_before`: loops of all rounds worked before them;
    `marks`: what a tape should say of them."""
    if piece.worked is None or piece.reading is None:
        return ()
    loops = loops_before
    tape = {mark.round: tape_in_words(mark, piece.edge.name) for mark in marks}
    sheets: list[RoundSheet] = []
    keys: dict[str, int] = {}
    parts = zip(piece.reading.rounds, piece.worked.rounds, piece.rounds, strict=False)
    for round_, worked, count in parts:
        loops += (count.loops,)
        way = course(worked)
        key = _key(round_, count, way)
        keys[key] = keys.get(key, 0) + 1
        sheets.append(
            RoundSheet(
                number=count.number,
                key=f"{key}-{keys[key]}",
                row=row_as_written(round_, counted.sources),
                read=harmless(row_as_read(round_, piece.terms)) if is_copied(round_) else "",
                worked=count.done,
                found=in_words(count.found, piece.terms) if count.found else "",
                closes=count.closes,
                faults=tuple(_faults(piece, count)),
                begins=_begins(way, piece.edge),
                opening=_on_opening(way.opening, piece.terms),
                repeats=tuple(_repeat(r, piece.terms) for r in count.repeats),
                eased=tuple(_eased_all(way, count, piece.terms)),
                runs=tuple(_runs(way, count, piece)),
                total=everything(count.made, piece.terms),
                spaces=count.spaces,
                tape=tape.get(count.number, ""),
                thread=thread_in_words(count, loops, counted.thread),
            )
        )
    return tuple(sheets)


def _key(round_: Round, count: RoundCount, way: Course) -> str:
    """A digest of what is to be made in a round, wherever it stands in its border."""
    said = row_as_read(round_, "us")
    stages = [(s.motif, s.repeats, s.made, s.joint and s.joint.between) for s in way.stages]
    eased = [(a.at, a.by, a.before_repeat, a.element) for a in count.adjustments]
    content = repr((said, way.begins, stages, count.made, eased))
    return sha256(content.encode("utf-8", "surrogatepass")).hexdigest()[:16]


def _faults(piece: Piece, count: RoundCount) -> Iterator[str]:
    for f in piece.findings:
        if f.round == count.number and f.severity is not Severity.NOTE:
            yield harmless(f.message.removeprefix(f"round {count.number} does not close: "))
            yield from (harmless(line) for line in (f.help or "").splitlines())


def _begins(way: Course, edge: Edge) -> str:
    match way.begins:
        case int(place):
            told = f"over {edge.of} {place}"
        case (a, b):
            told = f"on the joint {harmless(a)} | {harmless(b)}"
        case str(motif):
            told = f"over {harmless(motif)}"
            told += ", in the middle of it, where it also ends" if way.stages[0].part else ""
    usual = edge.runs[0].motif if edge.runs else 1
    if way.begins != usual:
        told += "; the edge itself begins elsewhere, so count from here"
    return told + ("; the work is turned, and goes the other way" if way.turned else "")


def _on_opening(opening: Joint | None, terms: str) -> str:
    return everything(opening.on, terms) if opening and _anything(opening.on) else ""


def _anything(made: Tally) -> bool:
    return bool(made.chains or made.picots or any(made.stitches.values()))


def _repeat(count: RepeatCount, terms: str) -> str:
    over = f"; {count.left_over} left over" if count.left_over else ""
    if not count.times:
        return f"not made{over}"
    return f"{often(count.times)} in all: {each_repeat(count, terms)}{over}"


def _eased_all(way: Course, count: RoundCount, terms: str) -> Iterator[str]:
    for stage in way.stages:
        where = harmless(stage.motif)
        for eased in _eased(stage, count, terms):
            yield f"over {where}, {eased}" if where else eased


def _eased(stage: Stage, count: RoundCount, terms: str) -> Iterator[str]:
    for e in stage.eased:
        done = adjusted(e.fallen.by, count, terms)
        behind = f"after repeat {e.fallen.before_repeat}, at {everything(e.so_far, terms)} so far"
        yield f"{behind}: {done}"


# --- run by run -----------------------------------------------------------------


def _runs(way: Course, count: RoundCount, piece: Piece) -> Iterator[RunSheet]:
    if not piece.edge.runs:
        yield from _by_repeats(way, count, piece.terms)
        return
    many = len(way.stages) > MOST_BOXES
    single: list[Box] = []
    for group in series(way.stages, lambda s: (s.section, s.part, _as_key(s.made))):
        step = 10 if many else 1
        shared = [group[i : i + step] for i in range(0, len(group), step)]
        boxes = [_box(stages, way, count, piece.terms) for stages in shared]
        if len(group) == 1:
            single += boxes
            continue
        if single:
            yield RunSheet("", "", tuple(single))
            single = []
        made = everything(group[0].made, piece.terms)
        yield RunSheet(harmless(called(group, way.stages)), made, tuple(boxes))
    if single:
        yield RunSheet("", "", tuple(single))


def _by_repeats(way: Course, count: RoundCount, terms: str) -> Iterator[RunSheet]:
    boxes = tuple(_box([stage], way, count, terms) for stage in way.stages)
    if boxes:
        yield RunSheet("", "", boxes)


def _box(stages: Sequence[Stage], way: Course, count: RoundCount, terms: str) -> Box:
    first, last = stages[0], stages[-1]
    joint = last.joint
    return Box(
        what=_named(first, last),
        made=everything(first.made, terms),
        so_far=everything(last.so_far, terms),
        joint=tuple(harmless(n) for n in joint.between) if joint else (),
        on=everything(joint.on, terms) if joint and _anything(joint.on) else "",
        eased=tuple(line for s in stages for line in _eased(s, count, terms)),
        part=_part(first, way) if first.part else "",
    )


def _named(first: Stage, last: Stage) -> str:
    if first.motif:
        return harmless(first.motif if first is last else f"{first.motif} to {last.motif}")
    if first.repeats is None:
        return "the rest of the round"
    a, b = first.repeats
    return f"repeat {a}" if a == b else f"repeats {a} to {b}"


def _part(stage: Stage, way: Course) -> str:
    if stage is way.stages[0]:
        return "from where the round begins"
    return "up to where the round began"


def _as_key(made: Tally) -> tuple[tuple[tuple[str, int], ...], int, int]:
    return tuple(sorted(made.stitches.items())), made.chains, made.picots
