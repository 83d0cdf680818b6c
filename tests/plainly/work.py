"""A whole border worked on an edge, round by round."""

from __future__ import annotations

from collections.abc import Iterator

from border.text.tree import Border, Kind, Text, Whole
from border.yoke.edges import Edge
from plainly.counts import Record, made_record, open_paths, parts_record, repeat_record
from plainly.fabric import Fabric, edge_fabric, new_fabric
from plainly.line import Line, line_of
from plainly.readings import WrittenRow, clause_steps, simply_its_repeat, written_rows
from plainly.rounds import Adjustment, Round, work_adjusted
from plainly.sites import sites


def work_border(
    border: Border, edge: Edge, adjustments: list[tuple[int, str, int]] | None = None
) -> list[Record]:
    """One dictionary for each round, as in the record of a count, with its finding codes.

    `adjustments`: (round, at, by), in the order of the file.
    """
    return [record for record, _ in rounds_and_fabrics(border, edge, adjustments)]


def rounds_and_fabrics(
    border: Border,
    edge: Edge,
    adjustments: list[tuple[int, str, int]] | None = None,
    known: tuple[Fabric, ...] = (),
) -> Iterator[tuple[Record, Fabric]]:
    """Round by round: its record, and the fabric that it came out as.

    `known`: the fabrics of the first rounds, which are not worked again, nor told.
    """
    line = line_of(edge)
    fabric = known[-1] if known else edge_fabric(line)
    for row in written_rows(border, edge.closed)[len(known) :]:
        if row.turned_before:
            fabric = fabric.turned()
        asked = [Adjustment(at, by) for number, at, by in adjustments or () if number == row.number]
        worked, applied = work_adjusted(fabric, row, border.headings, asked)
        fabric = new_fabric(fabric.line, worked.made)
        yield _record(row, line, fabric, worked, applied), fabric


def _record(
    row: WrittenRow,
    line: Line,
    fabric: Fabric,
    worked: Round,
    applied: list[dict[str, object]],
) -> Record:
    return {
        "round": row.number,
        "closes": worked.closes,
        **made_record(worked.made),
        "spaces": len(sites(fabric, Whole(Kind("space")), chains_count=False)),
        "repeats": _repeats(row, worked),
        **parts_record(fabric, line),
        "adjustments": applied,
        "codes": sorted(worked.codes),
    }


def _repeats(row: WrittenRow, worked: Round) -> list[Record]:
    """The open-ended repeats in the order of the text."""
    if isinstance(row.body, Text):
        works = [work for _, work in worked.works]
        paths = open_paths(works[0].items)
        return [repeat_record(path, works, worked.made) for path in paths]
    found = []
    for clause, written in enumerate(row.body):
        works = [work for number, work in worked.works if number == clause]
        paths = open_paths(simply_its_repeat(clause_steps(written.text, ()).items))
        found += [repeat_record(path, works, worked.made) for path in paths]
    return found
