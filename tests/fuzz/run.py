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
SHARES = (91, 3, 4, 1, 1)


class Trials:
    """What was tried so far: inputs by kind, faults by where they were met, the slowest."""

    def __init__(self) -> None:
        self.tried: Counter[str] = Counter()
        self.faults: Counter[str] = Counter()
        self.slow: list[tuple[float, str]] = []

    def one(self, kind: str, random: Random) -> None:
        """Try one input; the first few of each fault are printed."""
        given, check = KINDS[kind](random)
        begun = time.perf_counter()
        try:
            check()
        except Exception as fault:
            self._met(kind, fault, given)
        took = time.perf_counter() - begun
        self.tried[kind] += 1
        if len(self.slow) < SLOW or took > self.slow[-1][0]:
            slow = [*self.slow, (took, f"{kind}: {given!r}"[:300])]
            self.slow = sorted(slow, reverse=True)[:SLOW]

    def _met(self, kind: str, fault: Exception, given: object) -> None:
        where = traceback.extract_tb(fault.__traceback__)[-1]
        name = f"{kind}: {type(fault).__name__} at {Path(where.filename).name}:{where.lineno}"
        self.faults[name] += 1
        if self.faults[name] <= SHOWN:
            print(f"--- {name}: {str(fault)[:600]}\n{given!r}", flush=True)


def run(number: int, seed: int, kinds: tuple[str, ...] = ()) -> Trials:
    """So many inputs tried, or as many as there were when it was interrupted."""
    random = Random(seed)
    trials = Trials()
    chosen = kinds or tuple(KINDS)
    shares = None if kinds else SHARES
    try:
        for _ in range(number):
            trials.one(random.choices(chosen, shares)[0], random)
    except KeyboardInterrupt:
        print("interrupted")
    return trials


def main(arguments: list[str]) -> int:
    number, seed = int(arguments[0]), int(arguments[1]) if len(arguments) > 1 else 1
    trials = run(number, seed, tuple(arguments[2:]))
    for took, shown in trials.slow:
        print(f"{took:.2f} s for {shown}")
    for name, count in trials.faults.most_common():
        print(f"{count} times: {name}")
    tried = trials.tried
    print(f"{tried.total()} inputs ({dict(tried)}), seed {seed}: {len(trials.faults)} faults")
    return 1 if trials.faults else 0


if __name__ == "__main__":
    raise SystemExit(main(sys.argv[1:]))
