"""What reading costs, measured and printed: `python tests/benchmarks/reading.py`.

Loading is what the first text of a run pays: modules, the words, the parser's table.
Reading is from text to tree and to its meaning, once all that is there. Times are
those of the processor; nothing is asserted, since machines differ.
"""

from __future__ import annotations

import os
import statistics
import subprocess
import sys
import time
from collections.abc import Callable
from functools import partial

PLAIN = (
    "*1 sc in next loop, ch 5, skip 2 loops; repeat from *.",
    "(2 dc, ch 2, 2 dc) in each ch-5 space.",
    "*1 sc in next space, ch 6; repeat from *. (34 spaces)",
    "*5 dc in next space, 1 sc in next space; repeat from *.",
    "*(3 dc, picot, 3 dc, picot, 3 dc) in next space, 1 sc in next space; repeat from *.",
)
IN_WORDS = (
    "1 plain, 5 chain, miss 2; repeat all round.",
    "2 treble, 2 chain, 2 treble, all in each 5 chain.",
    "1 plain in the middle of the 2 chain, 6 chain; repeat.",
    "In each loop work 1 plain, 5 treble, 1 plain.",
    "x 3 treble in one, 1 purl (5 chain, 1 slip in the 1st), 3 in next, missing 4 under them x repeat.",
)
WORDS = "plain means us sc\nchains count as stitches: yes\n"

LOADING = """import time
{}
start = time.process_time()
{}
print(time.process_time() - start)
"""
LARK = "import lark, msgspec, tomllib"
FLOOR = f"{LARK}\nfrom border.text.source import Source\nfrom border.text.syntax import read_border"
NAMED = f"{FLOOR}\nfrom border.text.vocabulary import names, vocabulary\nvocabulary(); names('uk')"
FIRST = "read_border(Source('a', 'terms: uk\\nround 1: 1 dc in each loop.'))"
STEPS = {
    "lark and the other libraries": ("", LARK),
    "the modules of the text floor": (LARK, FLOOR),
    "the words": (FLOOR, NAMED),
    "the parser's table, and a first row": (NAMED, FIRST),
    "the table made anew, where it is stale": (
        NAMED,
        "from border.text.building.parser import _made\n_made()",
    ),
}
"""What is loaded, with what is there before it."""

COMPILING = {k: v for k, v in os.environ.items() if k != "PYTHONDONTWRITEBYTECODE"}


def twenty(rows: tuple[str, ...], terms: str, headings: str = "") -> str:
    """A border of twenty rounds, of these four times over."""
    rounds = [f"round {n + 1}: {rows[n % len(rows)]}" for n in range(20)]
    return "\n".join([f"terms: {terms}", headings.strip(), *rounds]) + "\n"


def loading() -> None:
    print("loading, in a run of its own             milliseconds")
    for name, (before, step) in STEPS.items():
        command = [sys.executable, "-c", LOADING.format(before, step)]
        taken = []
        for _ in range(11):
            ran = subprocess.run(command, capture_output=True, check=True, text=True, env=COMPILING)
            taken.append(float(ran.stdout))
        print(f"  {name:<40} {statistics.median(taken[1:]) * 1e3:8.1f}")


def reading() -> None:
    from border.text.readings import read_rounds
    from border.text.source import Source
    from border.text.syntax import read_border

    print("twenty rounds, once all is loaded        milliseconds")
    texts = {
        "in plain words": twenty(PLAIN, "us"),
        "in the words of the books": twenty(IN_WORDS, "uk", WORDS),
    }
    for name, text in texts.items():
        source = Source("twenty.border", text)
        border, told = read_border(source)
        assert border is not None and not told, told
        to_tree = _taken(partial(read_border, source))
        meaning = _taken(partial(read_rounds, border, lambda source, name: None))
        print(f"  {name + ', to the tree':<40} {to_tree:8.1f}")
        print(f"  {name + ', to its meaning':<40} {meaning:8.1f}")


def _taken(what: Callable[[], object], times: int = 60) -> float:
    """The median of so many, in milliseconds."""
    all_ = []
    for _ in range(times):
        start = time.process_time()
        what()
        all_.append(time.process_time() - start)
    return statistics.median(all_) * 1e3


if __name__ == "__main__":
    loading()
    reading()
