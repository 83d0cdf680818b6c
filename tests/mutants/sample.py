"""Leaves a random sample of the mutants of a session to be tried: `sample.py SESSION N SEED`.

As many of each module as of any other, as far as it has so many; the rest are marked
as skipped. With `told` in place of N and SEED: what has come of them, one survivor a line.
"""

from __future__ import annotations

import sys
from collections import defaultdict
from random import Random

from cosmic_ray.work_db import WorkDB, use_db  # type: ignore[import-not-found, import-untyped, unused-ignore]
from cosmic_ray.work_item import (  # type: ignore[import-not-found, import-untyped, unused-ignore]
    TestOutcome,
    WorkerOutcome,
    WorkResult,
)

_NO_CHANGE = "core/ReplaceBinaryOperator_BitOr"
"""Mostly `X | None` in annotations, which are never evaluated."""


def leave(session: str, number: int, seed: int) -> None:
    """Mark all mutants but `number` of them as skipped; every module has its turn."""
    random = Random(seed)
    with use_db(session, WorkDB.Mode.open) as db:
        by_module: dict[str, list[str]] = defaultdict(list)
        skipped: list[str] = []
        for item in db.work_items:
            if item.mutations[0].operator_name.startswith(_NO_CHANGE):
                skipped.append(item.job_id)
                continue
            by_module[str(item.mutations[0].module_path)].append(item.job_id)
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
    """Print the survivors, and how many there are of each outcome."""
    counts: dict[str, int] = defaultdict(int)
    with use_db(session, WorkDB.Mode.open) as db:
        for item, result in db.completed_work_items:
            if result.worker_outcome is WorkerOutcome.SKIPPED:
                continue
            counts[str(result.test_outcome)] += 1
            if result.test_outcome is TestOutcome.SURVIVED:
                (one,) = item.mutations
                print(f"{one.module_path}:{one.start_pos[0]} {one.operator_name}\n{result.diff}")
    print(dict(counts))


if __name__ == "__main__":
    if sys.argv[2] == "told":
        tell(sys.argv[1])
    else:
        leave(sys.argv[1], int(sys.argv[2]), int(sys.argv[3]))
