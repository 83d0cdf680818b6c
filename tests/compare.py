"""Compares the two implementations on other random borders: `python tests/compare.py 500 [SEED]`.

Prints the first few borders of each kind of disagreement, and how many there
were. Every one is a defect in one of the two, or a choice to be written down.
"""

from __future__ import annotations

import json
import sys
from collections import Counter

import differential_test
import random_borders
from hypothesis import given, seed, settings
from plainly import work_border

from border.reckoning.counts import count_edge
from border.text.readings import read_rounds
from border.text.written import write_border
from border.working.adjusting import Adjustment
from border.working.work import work

SHOWN = 2
"""Borders shown of each kind of disagreement."""


def compare(number: int, start: int) -> Counter[str]:
    """How many borders were compared, could not be, and differ, by what differs."""
    seen: Counter[str] = Counter()

    @seed(start)
    @settings(differential_test.SOME, max_examples=number, derandomize=False)
    @given(random_borders.works())
    def one(drawn: differential_test.Work) -> None:
        edge, border, adjustments = drawn
        reading, told = read_rounds(border, lambda source, name: None)
        worked = work(reading, edge, [Adjustment(*a) for a in adjustments])
        if {f.code for f in (*told, *worked.findings)} & differential_test.UNDECIDED:
            seen["without a count"] += 1
            return
        seen["compared"] += 1
        ours = [differential_test._round(count) for count in count_edge(worked)]
        theirs = json.loads(json.dumps(work_border(border, edge, adjustments)))
        for mine, other in zip(json.loads(json.dumps(ours)), theirs, strict=False):
            plain = differential_test._put_alike(other)
            differs = [key for key in mine if mine[key] != plain.get(key)]
            if differs:
                kind = ", ".join(differs)
                seen[kind] += 1
                if seen[kind] <= SHOWN:
                    print(f"--- {kind}\n{write_border(border)}\n{edge}\n{adjustments}")
                    for key in differs:
                        print(f"  {key}\n    ours    {mine[key]}\n    plainly {plain.get(key)}")
                return

    one()
    return seen


if __name__ == "__main__":
    chosen = int(sys.argv[2]) if len(sys.argv) > 2 else 0
    print(dict(compare(int(sys.argv[1]) if len(sys.argv) > 1 else 500, chosen)))
