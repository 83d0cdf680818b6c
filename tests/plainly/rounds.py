"""One round: its text or its clauses worked, once without adjustments and once with them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from fractions import Fraction

from border.text.tree import Clause, Headings, Item, Text
from plainly.closing import closes, passes_more
from plainly.fabric import Fabric, Made, MadeStitch, bare
from plainly.line import Line
from plainly.openings import row_window
from plainly.readings import WrittenRow, clause_steps, has_repeat, row_steps, simply_its_repeat
from plainly.rows import Work
from plainly.runs import Boundary
from plainly.scopes import pieces

Plan = dict[tuple[int, Boundary], int]
"""By which window of the row, and which boundary there: how many sites to pass (or go back)."""


@dataclass
class Round:
    """A round as worked. `works`: each piece of text in order, with the clause that it is of."""

    made: list[Made] = field(default_factory=list)
    works: list[tuple[int, Work]] = field(default_factory=list)
    codes: set[str] = field(default_factory=set)

    @property
    def closes(self) -> bool:
        """For clauses, stretch by stretch."""
        return all(closes(work) for _, work in self.works)


def work_round(fabric: Fabric, row: WrittenRow, headings: Headings, plan: Plan) -> Round:
    """The round, with all its findings but those about adjustments."""
    if not isinstance(row.body, Text):
        worked = _work_clauses(fabric, row, row.body, headings, plan)
    else:
        worked = _work_text(fabric, row, headings, plan, own_repeat=False)
        if not worked.closes and _may_be_repeated(row.body, headings):
            repeated = _work_text(fabric, row, headings, plan, own_repeat=True)
            if repeated.closes:
                worked.codes.add("repeat-unclear")
    if not worked.closes and "repeat-unclear" not in worked.codes:
        worked.codes.add("row-does-not-close")
    if not any(isinstance(bare(piece), MadeStitch) for piece in worked.made):
        worked.codes.add("no-stitches")
    return worked


def _may_be_repeated(text: Text, headings: Headings) -> bool:
    """Repeats: a row without any repeat, and no heading to say what is done with it."""
    return headings.rows_repeated is None and not text.repeats and not has_repeat(text.items)


def _work_text(
    fabric: Fabric, row: WrittenRow, headings: Headings, plan: Plan, own_repeat: bool
) -> Round:
    steps = row_steps(row, headings, own_repeat)
    items = simply_its_repeat(steps.items)
    window, start_site = row_window(fabric, items, headings.chains_count is True)
    found = Round()
    if steps.assumed:
        found.codes.add("start-chain-assumed")
    work = Work(
        window,
        found.made,
        chains_unsaid=headings.chains_count is None,
        start_site=start_site,
        items=items,
        plan=_part_of(plan, 0),
    )
    _do(found, 0, work)
    return found


def _work_clauses(
    fabric: Fabric, row: WrittenRow, clauses: tuple[Clause, ...], headings: Headings, plan: Plan
) -> Round:
    found = Round()
    all_pieces, codes = pieces(fabric, clauses, headings.chains_count is True)
    found.codes |= codes
    opening: tuple[Item, ...] = row.opening
    for number, piece in enumerate(all_pieces):
        # Turning chains are made once, at the head of the row.
        text = clauses[piece.clause].text
        written = clause_steps(text, ()).items
        own = simply_its_repeat(written)
        following = [item for p in all_pieces for item in clauses[p.clause].text.items]
        steps = clause_steps(text, opening if own else (), following)
        opening = () if own else opening
        if steps.assumed:
            found.codes.add("start-chain-assumed")
        items = (*steps.items[: len(steps.items) - len(written)], *own)
        work = Work(
            piece.window,
            found.made,
            chains_unsaid=headings.chains_count is None,
            items=items,
            plan=_part_of(plan, number),
            opened=len(items) - len(own),
        )
        _do(found, piece.clause, work)
    return found


def _part_of(plan: Plan, number: int) -> dict[Boundary, int]:
    return {boundary: by for (window, boundary), by in plan.items() if window == number}


def _do(found: Round, clause: int, work: Work) -> None:
    work.work()
    found.works.append((clause, work))
    found.codes |= work.codes
    if passes_more(work):
        found.codes.add("passes-more")


# --- adjustments -------------------------------------------------------------------------------


@dataclass(frozen=True)
class Adjustment:
    at: str
    by: int


def work_adjusted(
    fabric: Fabric, row: WrittenRow, headings: Headings, adjustments: list[Adjustment]
) -> tuple[Round, list[dict[str, object]]]:
    """The round with its adjustments, and those that found a place, as they are told."""
    worked = work_round(fabric, row, headings, {})
    if not adjustments:
        return worked, []
    free = [
        (number, Boundary(r, k), position)
        for number, (_, work) in enumerate(worked.works)
        for r, run in enumerate(work.runs)
        for k, position in enumerate(run.boundaries)
    ]
    plan: Plan = {}
    taken: list[tuple[Adjustment, tuple[int, Boundary]]] = []
    for adjustment in adjustments:
        middles = list(_middles(fabric.line, adjustment.at))
        if not middles or not free:
            continue
        # The nearest boundary still free; min takes the earlier one on a tie.
        nearest = min(
            free, key=lambda entry: min(_distance(fabric.line, entry[2], m) for m in middles)
        )
        free.remove(nearest)
        plan[nearest[:2]] = adjustment.by
        taken.append((adjustment, nearest[:2]))
    worked = work_round(fabric, row, headings, plan)
    applied = [
        {"at": adjustment.at, "by": adjustment.by, "before_repeat": where[1].k + 1}
        for adjustment, where in taken
        if where[1] in worked.works[where[0]][1].applied
    ]
    if len(applied) < len(adjustments):
        worked.codes.add("adjustment-has-no-place")
    return worked, applied


def _middles(line: Line, at: str) -> Iterator[Fraction]:
    """The middle of a joint, or of each unbroken stretch of a section or a motif."""
    if "|" in at:
        a, b = (name.strip() for name in at.split("|", 1))
        yield from (joint.at for joint in line.joints() if joint.lies_between(a, b))
        return
    named = [stretch.answers_to(at) for stretch in line.stretches]
    spans: list[tuple[Fraction, Fraction]] = []
    for i, stretch in enumerate(line.stretches):
        if named[i] and i and named[i - 1]:
            spans[-1] = (spans[-1][0], stretch.end)
        elif named[i]:
            spans.append((stretch.start, stretch.end))
    if line.closed and len(spans) >= 2 and named[0] and named[-1]:
        spans[-1] = (spans[-1][0], line.n + spans.pop(0)[1])
    yield from ((start + end) / 2 for start, end in spans)


def _distance(line: Line, one: Fraction, other: Fraction) -> Fraction:
    """The short way round on a closed edge."""
    if not line.closed:
        return abs(one - other)
    ahead = (one - other) % line.n
    return min(ahead, line.n - ahead)
