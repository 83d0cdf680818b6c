"""Speeds, measured and printed with their yardsticks: `python tests/benchmarks/run.py [NAME ...]`.

Nothing here is asserted: machines differ. Everything is told beside a yardstick measured in
the same run, and as the ratio to it. Times are those of the processor, so that other work on
the machine counts for little; whatever is imported late, or compiled, is there before.
"""

from __future__ import annotations

import contextlib
import gc
import io
import os
import resource
import statistics
import subprocess
import sys
import time
import tracemalloc
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path

from border.cli import main
from border.cli.files import read_file
from border.pipeline import Pipeline
from border.showing.eased import EasedAll
from border.text.readings import Reading
from border.text.source import Source
from border.text.syntax import read_border
from border.texts import Texts
from border.wanted import AskedEdge
from border.working.work import work
from border.yoke.edges import Edge, plain_edge, runs_edge

HERE = Path(__file__).parent
DEMO = HERE.parents[1] / "patterns" / "fern.toml"
SIX, EIGHT, TWENTY, WHEEL_BY_WHEEL = (
    HERE / f"{name}.border"
    for name in ("six-rounds", "eight-rounds", "twenty-rounds", "wheel-by-wheel")
)

WHEELS = {
    "fifty alike": (6,) * 50,
    "one smaller": (6,) * 49 + (5,),
    "one larger": (6,) * 49 + (7,),
    "ten unlike": (6, 6, 6, 6, 6, 5, 6, 7, 6, 6) * 5,
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


def told(what: str, measured: float, yardstick: float, unit: str = "s", more: str = "") -> None:
    """One line: what was measured, its yardstick, and the ratio of the two."""
    form = ".4f" if unit == "s" else ",.1f"
    figures = f"{measured:>10{form}} {yardstick:>10{form}} {unit:<3}{measured / yardstick:8.1f}"
    print(f"  {what:<44}{figures}  {more}".rstrip(), flush=True)


def headed(title: str, yardstick: str) -> None:
    print(f"\n{title:<46}{'measured':>10} {'yardstick':>10}    {'ratio':>8}")
    print(f"  yardstick: {yardstick}")


# --- processes ----------------------------------------------------------------


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
    count = ("-m", "border", "count", str(DEMO))
    libraries = {"whole": ("-c", WHOLE), "used": ("-c", USED), "model": ("-c", ONE_MODEL)}
    commands = {
        "border --version": ("-m", "border", "--version"),
        "import border, count": ("-c", f"import border; border.count({str(DEMO)!r})"),
        "border count of the demo": count,
        "border count of the demo, --json": (*count, "--json"),
    }
    taken = medians({"bare": ("-c", "pass"), **libraries, **commands})
    for name, yardstick in (
        ("used", "Python importing what border uses of lark, rich and pydantic"),
        ("model", "the same, and one pydantic model made"),
        ("whole", "Python importing lark, rich and pydantic"),
        ("bare", "Python alone"),
    ):
        headed("start-up", yardstick)
        for command in commands:
            told(command, taken[command], taken[name])


# --- in this process ----------------------------------------------------------


def seconds(call: Callable[..., object], *given: object, times: int = 5) -> float:
    """The median of the processor's seconds, garbage collected before and not meanwhile."""
    taken = []
    call(*given)
    for _ in range(times):
        gc.collect()
        gc.disable()
        start = time.process_time()
        call(*given)
        taken.append(time.process_time() - start)
        gc.enable()
    return statistics.median(taken)


def mebibytes(call: Callable[..., object], *given: object) -> float:
    """The most memory that a call holds of what Python itself hands out."""
    gc.collect()
    tracemalloc.start()
    call(*given)
    _, most = tracemalloc.get_traced_memory()
    tracemalloc.stop()
    return most / 2**20


def command(*words: str) -> int:
    """One command from file to page, in this process, printing into the void."""
    with contextlib.redirect_stdout(io.StringIO()), contextlib.redirect_stderr(io.StringIO()):
        return main(words)


def text_to_tree() -> None:
    from lark import Lark

    headed("text to tree", "lark (LALR) reading about as many characters of JSON (RFC 8259)")
    source = Source(TWENTY.name, TWENTY.read_text(encoding="utf-8"))
    tree, findings = read_border(source)
    assert tree is not None and len(tree.rows) == 20 and not findings, findings
    json = Lark((HERE / "json.lark").read_text(encoding="utf-8"), parser="lalr")
    member = '{"round": 1, "of": ["dc", "ch", "sc"], "closes": true, "more": null},'
    as_long = f"[{member * (len(source.text) // len(member))} 0]"
    told("a border of 20 rows", seconds(read_border, source), seconds(json.parse, as_long))


def reading_of(file: Path) -> Reading:
    reading = Texts(read_file).border(str(file)).reading
    assert reading is not None
    return reading


def atoms_of(reading: Reading, edge: Edge) -> int:
    return sum(len(round_.fabric.kinds) for round_ in work(reading, edge).rounds)


def bare_lists(atoms: int) -> tuple[list[str], list[int], list[int]]:
    """So many atoms put down one by one, as a fabric keeps them."""
    kinds: list[str] = []
    pos: list[int] = []
    into: list[int] = []
    for i in range(atoms):
        kinds.append("dc")
        pos.append(16 * i)
        into.append(i)
    return kinds, pos, into


def working() -> None:
    headed("working", "as many atoms put into lists one by one, and nothing reckoned")
    for size in (10**4, 10**5, 10**6):
        once = 1 if size == 10**6 else 5
        for file, edge in (
            (SIX, plain_edge(size // 17, True)),
            (WHEEL_BY_WHEEL, runs_edge([7] * (size // 71), True)),
        ):
            reading = reading_of(file)
            atoms = atoms_of(reading, edge)
            taken = seconds(work, reading, edge, times=once)
            bare = seconds(bare_lists, atoms, times=once)
            each = f"{taken / atoms * 1e6:.2f} µs an atom"
            told(f"{file.stem}: {atoms:,} atoms", taken, bare, more=each)


def planner() -> None:
    headed("planner: eight rounds on some 300 places", "working them once")
    reading = reading_of(EIGHT)
    for name, runs in WHEELS.items():
        asked = AskedEdge(runs=runs)

        def plan(asked: AskedEdge = asked) -> EasedAll:
            return Pipeline(str(EIGHT), read_file, asked).eased(1)

        (planned,) = plan().works
        places = sum(abs(a.by) for one in planned.plans for a in one.plan.adjustments)
        yardstick = seconds(work, reading, asked.edge)
        more = f"{places} places eased"
        told(f"{name}, {sum(runs)} places", seconds(plan, times=3), yardstick, more=more)


def sheet() -> None:
    headed("sheet, as one page", "counting the same, for the terminal")
    wheels = (str(SIX), "--runs", ",".join(["6"] * 240))
    for name, of in (("the demo", (str(DEMO),)), ("six rounds on 240 wheels", wheels)):
        told(name, seconds(command, "sheet", *of), seconds(command, "count", *of))


def memory() -> None:
    headed("memory, at most", "as many atoms in bare lists")
    reading = reading_of(SIX)
    for loops in (600, 6_000, 60_000):
        atoms = atoms_of(reading, plain_edge(loops, True))
        count = mebibytes(command, "count", str(SIX), "--loops", str(loops))
        told(f"border count, {atoms:,} atoms", count, mebibytes(bare_lists, atoms), "MiB")


ALL = {
    "start-up": start_up,
    "text": text_to_tree,
    "working": working,
    "planner": planner,
    "sheet": sheet,
    "memory": memory,
}

if __name__ == "__main__":
    for name in sys.argv[1:] or ALL:
        ALL[name]()
