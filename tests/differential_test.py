"""Two implementations of the language, written apart, agree on random borders.

`plainly` was made from the language alone, for clarity. What differs by choice
where the language leaves one is put alike before the comparison.
"""

from __future__ import annotations

import functools
import json
from typing import Any

import random_borders
from hypothesis import HealthCheck, Phase, given, settings
from plainly import work_border

from border.reckoning.counts import RoundCount, Tally, count_edge
from border.text.readings import read_rounds
from border.text.source import Source
from border.text.syntax import read_border
from border.text.tree import Border
from border.text.written import write_border
from border.working.adjusting import Adjustment
from border.working.work import work
from border.yoke.edges import Edge

Record = dict[str, Any]
Work = tuple[Edge, Border, list[tuple[int, str, int]]]

UNDECIDED = {
    *("open-repeat-inside", "repeat-takes-nothing", "nothing-before", "place-inside"),
    *("difference-unclear", "difference-finds-nothing", "difference-leaves-nothing"),
}
"""Faults after which there is no count to agree on."""


# A border is drawn by working it plainly, row by row, which is slow: no shrinking, the same
# borders in every run, and both tests go over one drawing. `python tests/compare.py 500` compares others.
SOME = settings(
    max_examples=110,
    deadline=None,
    derandomize=True,
    database=None,
    phases=[Phase.generate],
    suppress_health_check=list(HealthCheck),
)


@functools.cache
def drawn() -> tuple[Work, ...]:
    """Random pieces of work, each once."""
    found: dict[str, Work] = {}

    @SOME
    @given(random_borders.works())
    def draw(work: Work) -> None:
        found.setdefault(repr(work), work)

    draw()
    return tuple(found.values())


def test_two_implementations_agree() -> None:
    compared = sum(_agree(*work) for work in drawn())
    assert compared > len(drawn()) / 2


def _agree(edge: Edge, border: Border, adjustments: list[tuple[int, str, int]]) -> bool:
    """Fails where the two differ; False where there is no count to agree on."""
    reading, told = read_rounds(border, lambda source, name: None)
    worked = work(reading, edge, [Adjustment(*a) for a in adjustments])
    codes = {f.code for f in (*told, *worked.findings)}
    if codes & UNDECIDED:
        return False
    ours = [_round(count) for count in count_edge(worked)]
    theirs = json.loads(json.dumps(work_border(border, edge, adjustments)))
    if "no-stitches" in codes or "too-large" in codes:
        theirs = theirs[: len(ours)]
    plainly = [_put_alike(round_) for round_ in theirs]
    assert json.loads(json.dumps(ours)) == plainly, write_border(border)
    return True


def test_a_border_written_out_is_read_as_the_same_tree() -> None:
    for _, border, _ in drawn():
        for terms in ("us", "uk", "early"):
            text = write_border(border, terms)
            again, _ = read_border(Source("again.border", text))
            assert again is not None, text
            assert again.rows == border.rows, text


def _tally(made: Tally) -> Record:
    return {"stitches": made.stitches, "chains": made.chains, "picots": made.picots}


def _round(count: RoundCount) -> Record:
    return {
        "round": count.number,
        "closes": count.closes,
        **_tally(count.made),
        "spaces": count.spaces,
        "repeats": [
            {
                "times": r.times,
                "takes": r.takes if r.times else {},
                "makes": _tally(r.makes) if r.times else {},
                "left_over": r.left_over,
            }
            for r in count.repeats
        ],
        "sections": [{"section": s.section, **_tally(s.made)} for s in count.sections],
        "motifs": [
            {"motif": m.motif, "section": m.section, **_tally(m.made), "usual": m.usual}
            for m in count.motifs
        ],
        "joints": [{"between": list(j.between), **_tally(j.made)} for j in count.joints],
        "adjustments": [
            {"at": a.at, "by": a.by, "before_repeat": a.before_repeat} for a in count.adjustments
        ],
    }


def _put_alike(round_: Record) -> Record:
    alike = {key: value for key, value in round_.items() if key != "codes"}
    for repeat in alike["repeats"]:
        if not repeat["times"]:
            repeat["takes"], repeat["makes"] = {}, {}
    return alike
