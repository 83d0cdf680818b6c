"""`border thread`: its tables, its record, and that they say what `count` says."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any

import jsonschema
import pytest
from rich.console import Console
from sheets import FERN, LACE, Files, cuff

from border.cli import main
from border.findings import Finding
from border.pipeline import Pipeline
from border.showing.folding import length, weight
from border.showing.record import count_record, to_json
from border.showing.schema import schema
from border.showing.thread_record import thread_record
from border.showing.thread_tables import MOST, thread_tables
from border.showing.thread_told import ThreadTold
from border.showing.thread_words import apart, listed, loop_length
from border.text.source import Source
from border.wanted import AskedEdge

SAMPLE = 'sample = [{ stitch = "dc", stitches = 40, used_mm = 690 }]\n'
THREAD = '[thread]\nsize = "40"\nhook_mm = 1.0\n'


def pipeline_of(files: Files, name: str, loops: int | None = None) -> Pipeline:
    def read(file: str) -> Source | Finding:
        if file in files:
            return Source(file, files[file])
        return Finding("file-unreadable", f"{file} cannot be read", "")

    return Pipeline(name, read, AskedEdge(loops), command="thread")


def told_of(
    files: Files, name: str = "cuff.toml", balls: float | None = None, loops: int | None = None
) -> ThreadTold:
    pipeline = pipeline_of(files, name, loops)
    return pipeline.unwound(balls, plan=balls is not None)


def shown(told: ThreadTold, width: int = 80) -> str:
    console = Console(width=width, color_system=None, markup=False, emoji=False, highlight=False)
    with console.capture() as captured:
        console.print(thread_tables(told))
    return "\n".join(line.rstrip() for line in captured.get().splitlines())


def joined(table: str) -> str:
    return " ".join(table.split())


def record_of(told: ThreadTold) -> Any:
    record = json.loads(to_json(thread_record(told)))
    made = schema() | {"$ref": "#/$defs/ThreadToldRecord"}
    jsonschema.Draft202012Validator(made).validate(record)
    return record


CASES: dict[str, tuple[Files, str, float | None, int | None]] = {
    "the demo": (FERN, "fern.toml", 2, None),
    "a border text": ({"lace.border": LACE}, "lace.border", None, 24),
    "a ball by weight": (cuff(THREAD + "ball_g = 0.05\n"), "cuff.toml", 3, None),
    "one swatch": (cuff(f"{THREAD}{SAMPLE}ball_m = 0.2\n"), "cuff.toml", 1.5, None),
    "nothing stated": (cuff(), "cuff.toml", None, None),
    "no such border": ({"cuff.toml": cuff()["cuff.toml"]}, "cuff.toml", None, None),
}


@pytest.mark.parametrize("case", CASES)
def test_the_record_keeps_to_its_schema_and_adds_up(case: str) -> None:
    files, name, balls, loops = CASES[case]
    told = told_of(files, name, balls, loops)
    record = record_of(told)
    for work in record["works"]:
        for key in ("mm", "low_mm", "high_mm"):
            by_round = sum(r[key] for r in work["rounds"])
            assert work[key] == pytest.approx(by_round, abs=0.2)
    total = sum(work["mm"] for work in record["works"])
    assert record["thread"]["mm"] == pytest.approx(total)
    assert [b["ball"] for b in record["balls"]] == list(range(1, len(record["balls"]) + 1))


@pytest.mark.parametrize("case", CASES)
def test_thread_and_count_say_the_same(case: str) -> None:
    files, name, balls, loops = CASES[case]
    counted = count_record(pipeline_of(files, name, loops).counted)
    record = record_of(told_of(files, name, balls, loops))
    assert record["thread"] == counted["thread"]
    for work, of_count in zip(record["works"], counted["works"], strict=True):
        assert [r["mm"] for r in work["rounds"]] == [r["thread_mm"] for r in of_count["rounds"]]
        assert work["edge"] == of_count["edge"]
    balls_to_have = counted["thread"].get("balls")
    if balls_to_have is not None:
        # One more than may run out.
        assert balls_to_have == len(record["balls"]) + 1


def test_the_table_has_every_figure_of_the_record() -> None:
    told = told_of(FERN, "fern.toml", 2)
    table, record = shown(told), record_of(told)
    rows = [re.split(r"\s{2,}", line.strip()) for line in table.splitlines()]
    for work in record["works"]:
        for r in (*work["rounds"], {**work, "round": "all"}):
            figures = [length(r[key]) for key in ("mm", "low_mm", "high_mm")]
            assert any(row[-4:] == [str(r["round"]), *figures] for row in rows)
    thread = record["thread"]
    assert f"in all about {length(thread['mm'])}, {weight(thread['grams'])}, between" in table
    assert f"have in hand {thread['balls']} balls of 21 m" in joined(table)
    assert "good to 5 % either way 9 times in 10, from 3 swatches" in table
    assert "40 sc took 650 mm: a loop of 8.1 mm, 1.5 % below the mean" in table
    assert joined(table).count("ball 1 ") == 1


def test_the_gauge_of_the_record_is_that_of_its_swatches() -> None:
    gauge = record_of(told_of(FERN, "fern.toml"))["gauge"]
    loops = [
        s["used_mm"] / s["stitches"] / {"dc": 4, "sc": 2, "ch": 1}[s["stitch"]]
        for s in gauge["swatches"]
    ]
    assert gauge["loop_mm"] == pytest.approx(sum(loops) / 3, abs=0.01)
    assert [s["apart"] for s in gauge["swatches"]] == pytest.approx(
        [loop / gauge["loop_mm"] - 1 for loop in loops], abs=0.002
    )
    assert gauge["times_in_10"] == 9
    one = record_of(told_of(cuff(THREAD + SAMPLE)))["gauge"]
    assert "times_in_10" not in one
    none = record_of(told_of(cuff(THREAD)))
    assert none["gauge"]["swatches"] == []
    assert none["thread"]["calibrated"] is False


def test_where_no_ball_is_stated_none_runs_out() -> None:
    told = told_of(cuff(THREAD))
    assert "so where it runs out is not reckoned" in joined(shown(told))
    assert "where the balls run out" not in shown(told)
    assert "ball_mm" not in record_of(told)["material"]


def test_a_ball_that_may_run_out_says_so() -> None:
    # 2.2 m for all rounds; with waste and the upper figure 2.7 m.
    told = told_of(cuff(f"{THREAD}{SAMPLE}ball_m = 2.6\n"))
    (end,) = told.ends
    assert end.about is None
    said = joined(shown(told))
    assert (
        "ball 1 lasts, by the middle figure at the earliest round 3 of cuff, on the joint cuff.6"
        in said
    )
    assert "cuff.1; it may last to the end" in said


def test_very_many_balls_are_cut_short() -> None:
    told = told_of(cuff(f"{THREAD}{SAMPLE}ball_m = 0.02\n"))
    assert len(told.ends) > MOST
    assert f"... and {len(told.ends) - MOST} more, all of them with --json" in shown(told)


def test_what_few_balls_are_good_for_is_told() -> None:
    said = joined(shown(told_of(FERN, "fern.toml", 2)))
    assert "with 2 balls of 21 m enough? hardly" in said
    assert "leave out the last round of hem: saves about 5.8 m, and 1.4 m are certain" in said
    assert "the last 2 rounds each of left armhole and right armhole: saves" in said
    plenty = joined(shown(told_of(FERN, "fern.toml", 3)))
    assert "with 3 balls of 21 m enough? enough, even by the upper figure" in plenty
    assert "leave out" not in plenty
    swatch = "a swatch of your own would tell much better"
    assert swatch not in said
    assert swatch in joined(shown(told_of(cuff(THREAD + "ball_m = 1\n"), balls=3)))
    none = joined(shown(told_of(FERN, "fern.toml", 0.1)))
    assert "with 0.1 balls of 21 m enough? not enough" in none
    assert "nothing that can be left out makes them last for certain" in none


def test_a_chain_to_work_on_is_told_besides() -> None:
    files = cuff(f"{THREAD}{SAMPLE}")
    files["cuff.toml"] = files["cuff.toml"].replace(
        'runs = [{ section = "cuff", motifs = 6, places = 4 }]', 'places = 24\nof = "chain"'
    )
    # 24 chains of 4.3125 mm: 103.5 mm.
    assert "the chain that cuff is worked on takes about 10 cm besides" in shown(told_of(files))
    assert "worked on takes" not in shown(told_of(cuff(THREAD)))


def test_the_readme_shows_the_thread_of_the_demo() -> None:
    readme = (Path(__file__).parents[1] / "README.md").read_text(encoding="utf-8")
    part = readme.partition("    border thread patterns/fern.toml --plan\n")[2].partition(
        "\nA join is"
    )[0]
    lines = [line.removeprefix("    ") for line in part.splitlines()]
    told = shown(told_of(FERN, "fern.toml", 2)).splitlines()
    said = [line for line in lines if line.strip() not in ("", "…")]
    assert len(said) > 25
    at = 0
    for line in said:
        assert line in told[at:], line
        at = told.index(line, at) + 1


@pytest.mark.parametrize("width", [60, 80, 120])
def test_no_line_is_wider_than_the_page(width: int) -> None:
    assert max(map(len, shown(told_of(FERN, "fern.toml", 2), width).splitlines())) <= width


def test_nothing_that_a_user_wrote_is_markup_or_an_order_to_the_terminal() -> None:
    files = cuff(
        f"{THREAD}{SAMPLE}ball_m = 0.5\nballs = 1\n".replace('"40"', '"4[red]"'),
        name="[red]\x1b[31m",
    )
    files["cuff.toml"] = files["cuff.toml"].replace("\x1b", "\\u001b")
    told = told_of(files, balls=1)
    table = shown(told)
    assert "[red]\ufffd[31m: thread" in table
    assert "\x1b" not in table


@pytest.mark.parametrize(
    ("names", "told"), [(["a"], "a"), (["a", "b"], "a and b"), (["a", "b", "c"], "a, b and c")]
)
def test_lists(names: list[str], told: str) -> None:
    assert listed(names) == told


def test_figures_have_two_digits() -> None:
    assert [loop_length(mm) for mm in (0.431, 4.27, 9.96, 12.4)] == [
        *("0.43 mm", "4.3 mm", "10 mm", "12 mm"),
    ]
    assert [weight(g) for g in (0.4, 0.39, 3.0, 9.96, 123.4)] == [
        *("0.40 g", "0.39 g", "3.0 g", "10 g", "120 g"),
    ]
    assert [apart(share) for share in (0.0123, -0.2, 0.0001)] == [
        *("1.2 % above the mean", "20 % below the mean", "the mean"),
    ]


# --- the command --------------------------------------------------------------------


def ran(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], files: Files, *arguments: str
) -> tuple[int, str, str]:
    for name, text in files.items():
        (tmp_path / name).write_text(text, encoding="utf-8")
    first, *more = arguments
    code = main(["thread", str(tmp_path / first), *more])
    return code, *capsys.readouterr()


def test_the_command(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    code, out, err = ran(tmp_path, capsys, FERN, "fern.toml", "--plan")
    assert code == 0
    assert "with 2 balls of 21 m" in out
    assert "[join-seen]" in err and "fern-hem.border:8:1: warning: ball 2 runs out" in err
    _, out, _ = ran(tmp_path, capsys, FERN, "fern.toml", "--work", "neck", "--balls", "1")
    assert "with 1 ball of 21 m" in out
    assert "all edges" not in out
    _, out, _ = ran(tmp_path, capsys, FERN, "fern.toml", "--json")
    assert "plan" not in json.loads(out)
    code, out, err = ran(tmp_path, capsys, {"lace.border": LACE}, "lace.border", "--loops", "24")
    assert code == 0
    assert "[thread-uncalibrated]" in err
    code, out, err = ran(tmp_path, capsys, {"lace.border": LACE}, "lace.border")
    assert (code, out) == (2, "")
    assert "border thread" in err and "edge-needed" in err


def test_how_many_balls_must_be_known(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    code, out, err = ran(tmp_path, capsys, cuff(THREAD), "cuff.toml", "--plan")
    assert code == 1
    assert "all" in out
    assert "it is not said how many balls there are and how much is in one" in err
    assert "write under [thread] balls = 2 (or --balls 2) and ball_g = 20 or ball_m = 220" in err
    text = {"lace.border": LACE}
    _, _, err = ran(tmp_path, capsys, text, "lace.border", "--loops", "24", "--balls", "2")
    assert "write in a project, under [thread], ball_g = 20 or ball_m = 220" in err


@pytest.mark.parametrize("said", ["0", "two", "-1", "1e9", "99999"])
def test_what_is_no_number_of_balls_is_wrong_usage(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], said: str
) -> None:
    code, out, err = ran(tmp_path, capsys, FERN, "fern.toml", f"--balls={said}")
    assert (code, out) == (2, "")
    assert f'"{said}" is no number of balls' in err
