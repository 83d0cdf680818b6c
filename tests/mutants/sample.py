"""Leaves a random sample of the mutants of a session to be tried: `sample.py SESSION N SEED`.

As many of each module as of any other, as far as it has so many; the rest are marked
as skipped, and so are those that change an annotation, which is never evaluated. With
`told` in place of N and SEED: what has come of them, the survivors first.
"""

from __future__ import annotations

import ast
import sys
from collections import Counter, defaultdict
from functools import cache
from pathlib import Path
from random import Random

from cosmic_ray.work_db import WorkDB, use_db  # type: ignore[import-not-found, import-untyped, unused-ignore]
from cosmic_ray.work_item import (  # type: ignore[import-not-found, import-untyped, unused-ignore]
    TestOutcome,
    WorkerOutcome,
    WorkResult,
)

_Span = tuple[tuple[int, int], tuple[int, int]]


@cache
def annotations_of(module: Path) -> list[_Span]:
    """Where the annotations of a module stand, as (line, column) from and to."""
    nodes = ast.walk(ast.parse(module.read_text(encoding="utf-8")))
    found = (getattr(n, name, None) for n in nodes for name in ("annotation", "returns"))
    return [
        ((a.lineno, a.col_offset), (a.end_lineno or a.lineno, a.end_col_offset or 0))
        for a in found
        if isinstance(a, ast.expr)
    ]


def leave(session: str, number: int, seed: int) -> None:
    """Mark all mutants but `number` of them as skipped; every module has its turn."""
    random = Random(seed)
    with use_db(session, WorkDB.Mode.open) as db:
        by_module: dict[str, list[str]] = defaultdict(list)
        skipped: list[str] = []
        for item in db.work_items:
            (one,) = item.mutations
            spans = annotations_of(one.module_path)
            if any(start <= one.start_pos and one.end_pos <= end for start, end in spans):
                skipped.append(item.job_id)
            else:
                by_module[str(one.module_path)].append(item.job_id)
        for jobs in by_module.values():
            random.shuffle(jobs)
        kept: list[str] = []
        while len(kept) < number and any(by_module.values()):
            for module in random.sample(sorted(by_module), len(by_module)):
                if by_module[module] and len(kept) < number:
                    kept.append(by_module[module].pop())
        skipped += [job for jobs in by_module.values() for job in jobs]
        db.set_multiple_results(skipped, WorkResult(WorkerOutcome.SKIPPED))
        print(f"{len(kept)} mutants of {db.num_work_items} are left, seed {seed}")


def tell(session: str) -> None:
    """Print the survivors, and how many there are of each outcome on each floor."""
    counts: Counter[str] = Counter()
    with use_db(session, WorkDB.Mode.open) as db:
        for item, result in db.completed_work_items:
            if result.worker_outcome is WorkerOutcome.SKIPPED:
                continue
            (one,) = item.mutations
            late = "Timeout (" in (result.output or "") or result.output == "timeout"
            outcome = "out of time" if late else str(result.test_outcome)
            counts[f"{one.module_path.parent.name}: {outcome}"] += 1
            if result.test_outcome is TestOutcome.SURVIVED:
                print(f"{one.module_path}:{one.start_pos[0]} {one.operator_name}\n{result.diff}")
    print(*(f"{what} {number}" for what, number in sorted(counts.items())), sep="\n")


if __name__ == "__main__":
    if sys.argv[2] == "told":
        tell(sys.argv[1])
    else:
        leave(sys.argv[1], int(sys.argv[2]), int(sys.argv[3]))
