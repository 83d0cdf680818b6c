"""What once went wrong, found by fuzzing, does no more; a slice of the fuzzing; and costs.

A case is a file in `fuzz/found/`: `.border` a border text, `.toml` a project,
`.line` a command line, its words on lines of their own.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from itertools import pairwise
from pathlib import Path
from sys import gettrace, setprofile, settrace
from types import FrameType
from typing import Any

import pytest
from fuzz import held, run

from border.cli import read_file
from border.findings import Finding
from border.pipeline import Pipeline
from border.planning.offers import task_for
from border.planning.plans import plan_all
from border.planning.spots import spots_of
from border.planning.trials import worked_on
from border.text.row_texts import MOST_WORDS
from border.text.shaping.marks import MOST
from border.text.source import Source
from border.text.syntax import read_border
from border.texts import Texts, first_faulty
from border.wanted import AskedEdge
from border.working.adjusting import Adjustment, Boundary, middles, planned
from border.working.fabric import edge_fabric
from border.yoke.edges import plain_edge, runs_edge

FOUND = sorted((Path(__file__).parent / "fuzz" / "found").iterdir())


@pytest.mark.parametrize("case", FOUND, ids=lambda case: case.name)
def test_what_was_found_holds(case: Path) -> None:
    text = case.read_bytes().decode("utf-8")
    match case.suffix:
        case ".border":
            held.text_holds(text)
            for edge in held.EDGES:
                held.count_holds(text, edge)
        case ".toml":
            held.project_holds(text)
        case ".line":
            held.command_holds(text.splitlines(), run.FILES)
        case _:
            pytest.fail(f"{case} is of no kind")


@pytest.mark.parametrize("kind", run.KINDS)
def test_a_slice_of_the_fuzzing(kind: str) -> None:
    """As many more as one likes: `python tests/fuzz/run.py N SEED`."""
    trials = run.run(60, 8, (kind,))
    assert trials.tried == {kind: 60}
    assert not trials.faults


def test_a_fault_would_be_seen(monkeypatch: pytest.MonkeyPatch) -> None:
    def fail(text: str) -> None:
        raise AssertionError(text)

    monkeypatch.setattr(held, "text_holds", fail)
    assert run.run(2, 1, ("text",)).faults.total() == 2


# --- what an input costs ------------------------------------------------------------------


def calls(work: Callable[[], Any]) -> int:
    """How many calls a piece of work takes: what it costs, on any machine."""
    count = 0

    def seen(frame: FrameType, event: str, given: object) -> None:
        nonlocal count
        count += event in ("call", "c_call")

    setprofile(seen)
    try:
        work()
    finally:
        setprofile(None)
    return count


def steps(work: Callable[[], Any]) -> int:
    """The same by the lines that are run, each time round a loop: for what calls nothing."""
    count = 0

    def seen(frame: FrameType, event: str, given: object) -> Any:
        nonlocal count
        count += 1
        return seen

    before = gettrace()
    settrace(seen)
    try:
        work()
    finally:
        settrace(before)
    return count


ROW = "1 sc in next loop, ch 3, "
LONG_TEXTS: dict[str, Callable[[int], str]] = {
    "a row of many steps": lambda n: "round 1: " + ROW * n,
    "brackets": lambda n: "round 1: " + "(1 sc, ch 1) twice, " * n,
    "many rows": lambda n: "".join(f"round {i}: {ROW}\n" for i in range(1, n)),
    "the same row": lambda n: "round 1: 1 sc in each st.\n" * n,
    "long lists of rows": lambda n: "rounds 1-900: 1 sc in each st.\n" * n,
    "copies": lambda n: "round 1: 1 sc.\n" + "round 2: repeat round 1 900 times\n" * n,
    "stars": lambda n: "round 1: " + "* " * n,
    "stars in one": lambda n: "round 1: " + "*" * n,
    "crosses": lambda n: "round 1: " + "x 1 dc " * n,
    "daggers": lambda n: "round 1: " + "\u2020 1 dc; repeat from \u2020; " * n,
    "stars to stars": lambda n: "round 1: " + "* 1 dc ** ch 2; repeat from * to **; " * n,
    "open brackets": lambda n: "round 1: " + "(" * n,
    "figures of figures": lambda n: (
        "".join(f"f{c} = {f'f{d} ' * n}\n" for c, d in zip("abcdefgh", "bcdefghi", strict=True))
        + "round 1: 1 fa."
    ),
    "a figure of itself": lambda n: f"fan = {'fan ' * n}\nround 1: 1 fan.",
    "a figure many times": lambda n: f"fan = {'2 dc ' * 90}\nround 1: {'1 fan, ' * n}",
    "places first": lambda n: "round 1: " + "in each loop work 1 dc, 2 ch, " * n,
    "strange words": lambda n: "round 1: " + "zzyx " * n,
    "remarks": lambda n: "round 1: " + "-- a -- 1 sc, " * n,
    "quotation marks": lambda n: "round 1: " + '"' * n,
    "clauses": lambda n: "round 1: " + "over each motif: 1 sc in each loop; " * n,
    "claims": lambda n: "round 1: 1 sc in each loop. " + "(12 sc) " * n,
    "headings": lambda n: "long means us dc\n" * n + "round 1: 1 sc.",
    "numbers on lines of their own": lambda n: "round 1: 1 sc in each loop,\n" + "1st,\n" * n,
    "hundreds on lines of their own": lambda n: "round 1: 1 sc,\n" + "hundred and\n" * n,
    "the word round": lambda n: "round\n" * n,
    "no signs at all": lambda n: "round 1: " + "\0" * n,
}


@pytest.mark.parametrize("name", LONG_TEXTS)
def test_twice_the_text_is_little_more_than_twice_the_work(name: str) -> None:
    """Both below and above the size from which a row is not read at all."""

    def read(n: int) -> None:
        read_border(Source("a.border", "terms: us\n" + LONG_TEXTS[name](n)))

    read(10)
    for n in (100, 1500):
        once, twice = (calls(partial(read, length)) for length in (n, 2 * n))
        assert twice < 3 * once + 5000, n


LONG_PROJECTS: dict[str, Callable[[int], str]] = {
    "points in a key": lambda n: "a." * n + "a = 1",
    "points in a table's name": lambda n: f"[{'a.' * n}a]",
    "lists in lists": lambda n: "a = " + "[" * n,
    "edges": lambda n: "".join(f'[[edge]]\nname = "a{i}"\nplaces = 12\n' for i in range(n)),
    "works": lambda n: (
        '[[edge]]\nname = "a"\nplaces = 12\n' + '[[work]]\nedge = "a"\nborder = "b.border"\n' * n
    ),
    "unknown keys": lambda n: "".join(f"k{i} = 1\n" for i in range(n)),
    "swatches": lambda n: (
        '[thread]\nsize = "40"\nhook_mm = 1.0\nsample = ['
        + '{ stitch = "dc", stitches = 40, used_mm = 690 },' * n
        + "]"
    ),
}


@pytest.mark.parametrize("name", LONG_PROJECTS)
def test_twice_the_project_is_little_more_than_twice_the_work(name: str) -> None:
    def count(n: int) -> None:
        text = f"format = 1\n{LONG_PROJECTS[name](n)}\n"
        sources = {"a.toml": text, "b.border": held.SHELLS}
        _ = Pipeline("a.toml", lambda named: Source(named, sources[named])).counted

    count(3)
    assert calls(lambda: count(100)) < 3 * calls(lambda: count(50)) + 5000


def test_faults_in_many_rows_are_found_row_by_row() -> None:
    """Which round is the first with a fault; in twice the rows as many faults again."""

    def look(n: int) -> int:
        text = "terms: us\n" + "".join(f"round {i}: 1 zzyx.\n" for i in range(1, n + 1))
        border, findings = read_border(Source("a.border", text))
        assert border is not None
        assert first_faulty(border, "a.border", findings) == 1
        return steps(lambda: first_faulty(border, "a.border", findings))

    assert look(200) < 3 * look(100)


def test_adjustments_find_their_boundaries_at_once() -> None:
    edge = runs_edge([6] * 40, closed=True)
    line = edge_fabric(edge).line

    def look(n: int) -> int:
        seen = {Boundary(0, i): 7 * i % (240 * 16) for i in range(n)}
        given = tuple(Adjustment(1, f"edge.{i % 40 + 1}", 1) for i in range(50))
        plan, homeless = planned(given, line, 16, seen)
        assert len(plan) == 50
        assert not homeless
        return steps(lambda: planned(given, line, 16, seen))

    assert look(4000) < 3 * look(2000)
    assert look(4000) - look(2000) < 10 * 2000  # not every boundary for every adjustment


def test_an_edge_of_like_wheels_is_not_laid_on_itself_every_way() -> None:
    def look(n: int) -> int:
        edge = runs_edge([6] * n, closed=True)
        return steps(lambda: spots_of(edge, [], {}))

    assert look(200) < 3 * look(100)


# --- what is too long for a row --------------------------------------------------------------


def told(text: str) -> list[tuple[str, str]]:
    _, findings = read_border(Source("a.border", f"terms: us\n{text}"))
    return [(f.code, f.message) for f in findings]


def test_a_row_has_so_many_words_at_most() -> None:
    steps = "1 sc in next loop " * (MOST_WORDS // 5)
    assert told(f"round 1: {steps}") == []
    assert told(f"round 1: {steps}, {steps}") == [
        ("too-large", f"this row has more than {MOST_WORDS} words and marks")
    ]


def test_a_figure_may_make_a_row_too_long() -> None:
    text = "fan = " + "1 sc in next loop " * 500 + "\nround 1: 1 fan, 1 fan, 1 fan."
    assert [code for code, _ in told(text)] == ["too-large"]


def test_so_many_stars_at_most() -> None:
    # each repeat has two: its own, and that in "repeat from *"
    repeats = "*1 sc in next loop; repeat from * twice; "
    assert told("round 1: " + repeats * (MOST // 2)) == []
    assert [code for code, _ in told("round 1: " + repeats * (MOST // 2 + 1))] == ["too-large"]


def test_marks_inside_each_other_come_to_too_much() -> None:
    """What stands between two marks is put twice, and so is all that is inside it."""
    marks = ["*" * n for n in range(2, 22)]
    opened = " ".join(f"{mark} 1 sc" for mark in marks)
    closed = " ".join(f"\u2020 ch 1; repeat from {mark} to \u2020;" for mark in marks)
    codes = {code for code, _ in told(f"round 1: {opened} {closed}")}
    assert codes & {"too-large", "not-understood", "star-without-repeat"}


def test_a_border_has_so_many_words_at_most(monkeypatch: pytest.MonkeyPatch) -> None:
    """What is read of it is counted; where it breaks off is told once."""
    monkeypatch.setattr("border.text.rows.MOST_IN_ALL", 100)
    row = "1 sc in each of next 4 st, skip 1; repeat."  # 13 words and marks
    text = "terms: us\n" + "\n".join(f"round {n}: {row}" for n in range(1, 30))
    border, findings = read_border(Source("a.border", text))
    assert [(f.code, f.round) for f in findings] == [("too-large", 9)]
    assert border is not None
    assert [row.numbers for row in border.rows] == [(n,) for n in range(1, 9)]
    read = Texts(lambda name: Source(name, text)).border("a.border")
    assert read.faulty == 9
    assert read.reading is not None
    assert len(read.reading.rounds) == 8


def test_so_many_words_at_most_before_the_first_row() -> None:
    fans = "fan = " + "1 sc in next loop\n" * (MOST_WORDS // 5 - 2)
    assert told(fans + "round 1: 1 sc.") == []
    more = told(fans + "star = " + "1 sc in next loop\n" * 9 + "round 1: 1 sc.")
    assert more == [
        ("too-large", f"more than {MOST_WORDS} words and marks stand before the first row")
    ]


def test_what_comes_behind_the_last_round_is_told_once() -> None:
    rows = "".join(f"round {n}: 1 sc in next st; repeat.\n" for n in range(1, 2000))
    ((code, message),) = told(rows)
    assert code == "not-understood"
    assert message == "the rounds that this head names cannot be counted out"


def test_a_border_has_so_many_rounds_at_most() -> None:
    assert told("round 1: 1 sc.\nrounds 2-1000: as round 1.") == []
    more = told("round 1: 1 sc.\nrounds 2-1001: as round 1.")
    assert more[0] == ("not-understood", "the rounds that this head names cannot be counted out")


# --- what is too much for a project -------------------------------------------------------------

EDGE = '[[edge]]\nname = "a"\nruns = [{ section = "b", motifs = 2, places = 6 }]\n'
WORK = '[[work]]\nedge = "a"\nborder = "b.border"\n'


def project(text: str) -> Pipeline:
    sources = {"a.toml": f"format = 1\n{text}", "b.border": held.SHELLS}
    return Pipeline("a.toml", lambda named: Source(named, sources[named]))


@pytest.mark.parametrize(
    ("before", "each", "behind", "most"),
    [
        (EDGE, WORK, "", 100),
        (EDGE + WORK, '[[work.adjust]]\nround = 1\nat = "b"\nby = 12\n', "", 100),
        (EDGE + WORK + "measured = [", "{ round = 1, spaces = 2, mm = 9 },", "]", 100),
        (EDGE + WORK + "mirror = [", '"b.1",', "]", 100),
        (EDGE, '[[attach]]\nedge = "a"\nparts = [{ plain_mm = 60 }]\n', "", 100),
        (
            EDGE + '[thread]\nsize = "40"\nsample = [',
            '{stitch="dc",stitches=9,used_mm=9},',
            "]",
            100,
        ),
        (EDGE + '[[attach]]\nedge = "a"\nparts = [', "{ plain_mm = 60 },", "]", 100),
        ("[yoke]\nloops = 9\n[[motif]]\nname = 'b.1'\nring = [", '"b 1",', "]", 100),
        (EDGE, '[[label]]\nname = "l"\nmotifs = ["b.1"]\n', "", 1000),
    ],
)
def test_a_project_has_so_many_of_a_kind(before: str, each: str, behind: str, most: int) -> None:
    fine, more = (project(before + each * n + behind).findings for n in (most, most + 1))
    told = f"must be a list of {most} or fewer, not a list of {most + 1}"
    assert not any(told in f.message for f in fine)
    (finding,) = [f for f in more if told in f.message]
    assert finding.code == "bad-value"


def test_pieces_of_work_can_be_too_much_together(monkeypatch: pytest.MonkeyPatch) -> None:
    """36 stitches each on 12 loops: what comes behind is left out of every command."""
    monkeypatch.setattr("border.wanted.WORK_LIMIT", 90)
    assert [f.code for f in project(EDGE + WORK * 2).findings] == []
    three = project(EDGE + WORK * 3)
    (finding,) = three.findings
    assert finding.code == "too-large"
    assert finding.span == three.works[2].span
    assert len(three.counted.pieces) == 2
    for found in (three.needed, three.eased(1), three.lying, three.written(None)):
        assert len(found.works) <= 2
        assert finding in found.findings
    assert finding in three.sewing.findings


def test_a_round_too_large_counts_for_what_is_too_much(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("border.working.work.WORK_LIMIT", 20)
    monkeypatch.setattr("border.wanted.WORK_LIMIT", 500_000)
    codes = [f.code for f in project(EDGE + WORK * 3).findings]
    assert codes == ["too-large", "too-large"]  # of the first round too large, then of the rest


def test_trials_end_where_the_work_would_be_too_large(monkeypatch: pytest.MonkeyPatch) -> None:
    reading = Texts(lambda name: Source(name, held.SHELLS)).border("b.border").reading
    assert reading is not None
    assert len(worked_on(reading, plain_edge(12, closed=True))) == 2
    monkeypatch.setattr("border.planning.trials.WORK_LIMIT", 20)
    assert len(worked_on(reading, plain_edge(12, closed=True))) == 1


def test_a_working_of_a_large_row_counts_as_several(monkeypatch: pytest.MonkeyPatch) -> None:
    rows = "terms: us\nround 1: 1 sc in each loop.\nround 2: 1 sc in next 5 st, ch 1, skip 2 st; repeat."
    reading = Texts(lambda name: Source(name, rows)).border("b.border").reading
    assert reading is not None
    task = task_for(reading, plain_edge(24, closed=True), None)
    (easy,) = plan_all([task])
    assert easy.plans
    monkeypatch.setattr("border.planning.search.LARGE", 0.01)
    (hard,) = plan_all([task])
    assert hard.stuck.given_up
    assert not hard.plans


def test_no_message_quotes_a_whole_ring() -> None:
    names = ", ".join(f'"{"long name " * 9}{n} 1"' for n in range(90))
    ring = f'[yoke]\nloops = 16\n[[motif]]\nname = "b.1"\nring = [{names}]\n'
    long = project(ring.replace("long name 1", "b")).findings
    assert {"loops-do-not-add-up", "ring-faulty"} <= {f.code for f in long}
    held.findings_hold(long, {"a.toml": Source("a.toml", f"format = 1\n{ring}")})


@pytest.mark.parametrize("row", ["ch {}", "1 sc in next loop, ch {}", "as round 1 {}"])
def test_no_message_quotes_a_whole_number(row: str) -> None:
    held.text_holds(f"terms: us\nround 1: 1 sc in each loop.\nround 2: {row.format('9' * 5000)}")


def test_no_message_quotes_a_whole_name_of_a_file(tmp_path: Path) -> None:
    finding = read_file(str(tmp_path / ("a" * 5000)))
    assert isinstance(finding, Finding)
    held.findings_hold([finding], {})


def test_nothing_is_eased_into_a_round_too_large() -> None:
    rows = "terms: us\nround 1: 1 sc in each loop.\nround 2: 1 sc in next 5 st, ch 1, skip 2 st; repeat.\nround 3: (ch 900000) 9 times."
    for edge in (AskedEdge(loops=24), AskedEdge(runs=(12, 12))):
        eased = Pipeline("b.border", lambda name: Source(name, rows), edge, command="adjust").eased(
            1
        )
        assert {"too-large", "no-plan"} <= {f.code for f in eased.findings}


def test_parts_of_an_edge_are_found_by_their_names() -> None:
    """Each motif and each joint at its middle, without looking through all of them for it."""

    def look(n: int) -> int:
        line = edge_fabric(runs_edge([6] * n, closed=True)).line
        each = [f"edge.{i}" for i in range(1, n + 1)]
        joints = [f"{a} | {b}" for a, b in pairwise([each[-1], *each])]
        assert [middles(line, 2, name) for name in each] == [[12 * i + 6] for i in range(n)]
        assert [middles(line, 2, name) for name in joints] == [[12 * i] for i in range(n)]
        return steps(lambda: [middles(line, 2, name) for name in (*each, *joints)])

    assert look(200) < 3 * look(100)
