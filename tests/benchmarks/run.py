"""Speeds, measured and printed with their yardsticks: `python tests/benchmarks/run.py`.

Nothing here is asserted: machines differ. Start-up is told as a ratio to
starting Python with the same libraries, long edges as time per place. Times are
those of the processor, so that other work on the machine counts for little, and
every command is run once before, so that its modules are compiled.
"""

from __future__ import annotations

import os
import resource
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Mapping, Sequence
from pathlib import Path

DEMO = Path(__file__).parents[2] / "patterns" / "fern.toml"

SIX_ROUNDS = """terms: us
round 1: *1 sc in next loop, ch 3; repeat from *.
round 2: *3 dc in next space, ch 1; repeat from *.
round 3: *1 sc in next space, ch 5; repeat from *.
round 4: *5 dc in next space, 1 sc in next space; repeat from *.
round 5: *1 sc in next block, ch 3; repeat from *.
round 6: 1 sc in each st.
"""

EIGHT_ROUNDS = """terms: us
round 1: 1 sc in next loop, *ch 3, skip 1 loop, 1 sc in next loop; repeat from *, ch 3.
round 2: *3 dc in next space, ch 1; repeat from *.
round 3: *1 sc in next space, ch 5; repeat from *.
round 4: *1 sc in next space, ch 5, skip 1 space; repeat from *.
round 5: *5 dc in next space, 1 sc in next space, ch 3, 1 sc in next space; repeat from *.
round 6: *1 sc in centre of next group of 5, ch 4, 1 dc in next space, ch 4; repeat from *.
round 7: *1 sc in next space, ch 5; repeat from *.
round 8: *(3 dc, picot, 3 dc) in next space, 1 sc in next space, ch 2, 1 sc in next space;
    repeat from *.
"""
WHEELS = {
    "fifty alike": [6] * 50,
    "one smaller": [6] * 49 + [5],
    "one larger": [6] * 49 + [7],
    "ten unlike": [6, 6, 6, 6, 6, 5, 6, 7, 6, 6] * 5,
}
"""Motifs of edges of about 300 places."""


WHOLE = "import lark, rich.console, rich.table, pydantic"

USED = """from lark import Lark
from rich.console import Console
from rich.table import Table
from pydantic import AfterValidator, BaseModel, ConfigDict, Field, model_validator
"""

ONE_MODEL = f"{USED}\nclass Table(BaseModel):\n    loops: int\n"
"""pydantic loads most of itself with the first model."""

COMPILING = {k: v for k, v in os.environ.items() if k != "PYTHONDONTWRITEBYTECODE"}


def python(*arguments: str) -> float:
    """The processor's seconds of one run of Python."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    command = [sys.executable, *arguments]
    subprocess.run(command, capture_output=True, check=True, env=COMPILING)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def medians(commands: Mapping[str, Sequence[str]], times: int = 15) -> dict[str, float]:
    """The median of each command, run by turns, so that all meet the same weather."""
    taken: dict[str, list[float]] = {name: [] for name in commands}
    for turn in range(times + 1):
        for name, command in commands.items():
            seconds = python(*command)
            if turn > 0:
                taken[name].append(seconds)
    return {name: statistics.median(all_) for name, all_ in taken.items()}


def start_up() -> None:
    whole = "importing lark, rich, pydantic"
    used = "importing what border uses of them"
    taken = medians(
        {
            "Python alone": ("-c", "pass"),
            whole: ("-c", WHOLE),
            used: ("-c", USED),
            "  and making one pydantic model": ("-c", ONE_MODEL),
            "border count of the demo": ("-m", "border", "count", str(DEMO)),
            "border count of the demo, --json": ("-m", "border", "count", str(DEMO), "--json"),
        }
    )
    print("start-up                              seconds   to importing   to what is used")
    for name, seconds in taken.items():
        ratios = f"{seconds / taken[whole]:12.2f}   {seconds / taken[used]:15.2f}"
        print(f"  {name:<35} {seconds:7.3f}   {ratios}")


def long_edges() -> None:
    print("six rounds on one long edge               seconds   microseconds a place")
    with tempfile.TemporaryDirectory() as folder:
        text = Path(folder) / "long.border"
        text.write_text(SIX_ROUNDS, encoding="utf-8")
        for places in (1_000, 10_000, 100_000):
            taken = python("-m", "border", "count", str(text), "--loops", str(places))
            print(
                f"  {places:>9,} loops                        {taken:9.2f}   {taken / places * 1e6:9.1f}"
            )


def plans() -> None:
    """Eight rounds on edges of about 300 places, without start-up."""
    from border.pipeline import Pipeline
    from border.text.source import Source
    from border.wanted import AskedEdge

    print("plans for eight rounds on some 300 places  seconds   places eased")
    source = Source("eight.border", EIGHT_ROUNDS)
    for name, runs in WHEELS.items():
        pipeline = Pipeline(source.name, lambda name: source, AskedEdge(runs=tuple(runs)))
        pipeline.eased(1)  # once before: what is imported late is there
        pipeline = Pipeline(source.name, lambda name: source, AskedEdge(runs=tuple(runs)))
        start = time.process_time()
        (work,) = pipeline.eased(1).works
        seconds = time.process_time() - start
        places = sum(abs(a.by) for told in work.plans for a in told.plan.adjustments)
        print(f"  {name:<35} {sum(runs)} places {seconds:7.3f}   {places}")


if __name__ == "__main__":
    start_up()
    long_edges()
    plans()
