"""Speeds, measured and printed with their yardsticks: `python tests/benchmarks/run.py`.

Nothing here is asserted: machines differ. Start-up is told as a ratio to
starting Python with the same libraries, long edges as time per place.
"""

from __future__ import annotations

import statistics
import subprocess
import sys
import tempfile
import time
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


def seconds(command: list[str], times: int = 7) -> float:
    """The median wall time of a command."""
    taken = []
    for _ in range(times):
        start = time.perf_counter()
        subprocess.run(command, capture_output=True, check=False)
        taken.append(time.perf_counter() - start)
    return statistics.median(taken)


def start_up() -> None:
    bare = seconds([sys.executable, "-c", "pass"])
    libraries = seconds([sys.executable, "-c", "import lark, rich.console, rich.table, pydantic"])
    demo = seconds([sys.executable, "-m", "border", "count", str(DEMO)])
    record = seconds([sys.executable, "-m", "border", "count", str(DEMO), "--json"])
    print("start-up                                  seconds   to libraries")
    for name, taken in (
        ("Python alone", bare),
        ("Python, importing lark, rich, pydantic", libraries),
        ("border count of the demo", demo),
        ("border count of the demo, --json", record),
    ):
        print(f"  {name:<40} {taken:7.3f}   {taken / libraries:5.2f}")


def long_edges() -> None:
    print("six rounds on one long edge               seconds   microseconds a place")
    with tempfile.TemporaryDirectory() as folder:
        text = Path(folder) / "long.border"
        text.write_text(SIX_ROUNDS, encoding="utf-8")
        for places in (1_000, 10_000, 100_000):
            command = [sys.executable, "-m", "border", "count", str(text)]
            taken = seconds([*command, "--loops", str(places)], times=1)
            print(
                f"  {places:>9,} loops                        {taken:9.2f}   {taken / places * 1e6:9.1f}"
            )


if __name__ == "__main__":
    start_up()
    long_edges()
