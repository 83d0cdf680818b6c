"""Fuzzing: `python tests/fuzz/run.py N [SEED] [KIND …]`, to be run for as long as one likes.

Tries N inputs, of all kinds in the shares of `KINDS` or of the kinds named, and
prints what did not hold, the slowest inputs, and how many there were. A case that
is found goes into `tests/fuzz/found/`, as short as it can be made.
"""

from __future__ import annotations

import sys
import time
import traceback
from collections import Counter
from collections.abc import Callable
from pathlib import Path
from random import Random

if __name__ == "__main__":
    sys.path[:0] = [str(Path(__file__).parent.parent), str(Path(__file__).parent.parent.parent)]

from fuzz import held, inputs

SHOWN = 3
"""Inputs shown of each fault."""
SLOW = 5
FILES = {"a.border": held.SHELLS.encode(), "b.border": b"\xff\xfe", "empty.border": b""}


def _text(random: Random) -> tuple[object, Callable[[], None]]:
    text = inputs.border_text(random)
    return text, lambda: held.text_holds(text)


def _layout(random: Random) -> tuple[object, Callable[[], None]]:
    text = inputs.border_text(random)
    return text, lambda: held.layout_means_nothing(text)


def _count(random: Random) -> tuple[object, Callable[[], None]]:
    text, edge = inputs.border_text(random), random.choice(held.EDGES)
    return (text, edge), lambda: held.count_holds(text, edge)


def _project(random: Random) -> tuple[object, Callable[[], None]]:
    text = inputs.project(random)
    return text, lambda: held.project_holds(text)


def _command(random: Random) -> tuple[object, Callable[[], None]]:
    files = dict(FILES)
    files["a.toml"] = inputs.project(random).encode("utf-8", "surrogatepass")
    files["c.border"] = inputs.border_text(random).encode("utf-8", "surrogatepass")
    names = ("a.toml", "c.border", "a.toml", "c.border", *files, ".", "none", "\0")
    line = inputs.command_line(random, names)
    return (line, files), lambda: held.command_holds(line, files)


KINDS = {
    "text": _text,
    "layout": _layout,
    "count": _count,
    "project": _project,
    "command": _command,
}
SHARES = (80, 6, 8, 3, 3)


def run(number: int, seed: int, kinds: tuple[str, ...] = ()) -> tuple[Counter[str], Counter[str]]:
    """How many inputs of each kind were tried, and how often each fault was met."""
    random = Random(seed)
    tried: Counter[str] = Counter()
    faults: Counter[str] = Counter()
    slow: list[tuple[float, str]] = []
    chosen = kinds or tuple(KINDS)
    shares = None if kinds else SHARES
    for _ in range(number):
        (kind,) = random.choices(chosen, shares)
        given, check = KINDS[kind](random)
        begun = time.perf_counter()
        try:
            check()
        except Exception as fault:
            where = traceback.extract_tb(fault.__traceback__)[-1]
            name = f"{kind}: {type(fault).__name__} at {Path(where.filename).name}:{where.lineno}"
            faults[name] += 1
            if faults[name] <= SHOWN:
                print(f"--- {name}: {str(fault)[:600]}\n{given!r}", flush=True)
        tried[kind] += 1
        took = time.perf_counter() - begun
        if len(slow) < SLOW or took > slow[-1][0]:
            slow = sorted([*slow, (took, f"{kind}: {given!r}"[:300])], reverse=True)[:SLOW]
    for took, shown in slow:
        print(f"{took:.2f} s for {shown}")
    return tried, faults


def main(arguments: list[str]) -> int:
    number, seed = int(arguments[0]), int(arguments[1]) if len(arguments) > 1 else 1
    tried, faults = run(number, seed, tuple(arguments[2:]))
    for name, count in faults.most_common():
        print(f"{count} times: {name}")
    print(f"{sum(tried.values())} inputs ({dict(tried)}), seed {seed}: {len(faults)} faults")
    return 1 if faults else 0


if __name__ == "__main__":
    raise SystemExit(main(sys.argv[1:]))
