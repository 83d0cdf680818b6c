"""The command line, from the outside: what is printed where, and the exit codes."""

from __future__ import annotations

import json
import os
import re
import subprocess
import sys
from pathlib import Path

import jsonschema
import pytest
from outside import PROJECT, SHELLS, Border, Ran, codes, write

from border import __version__
from border.arguments import COMMANDS
from border.showing.schema import schema

# --- count --------------------------------------------------------------------


def test_a_border_text_is_counted_on_a_plain_edge(border: Border) -> None:
    write(shells_border=SHELLS)
    ran = border("count", "shells.border", "--loops", "12")
    assert ran.code == 0
    assert "every round closes" in ran.out
    assert "6 sc, 30 dc" in ran.out
    assert "[thread-uncalibrated]" in ran.err
    assert "error" not in ran.err


def test_what_does_not_close_is_an_error_and_counted_in_full(border: Border) -> None:
    write(shells_border=SHELLS)
    ran = border("count", "shells.border", "--loops", "13", "--json")
    record = json.loads(ran.out)
    assert ran.code == 1
    assert ran.err == ""
    first, second = record["works"][0]["rounds"]
    assert (first["closes"], second["closes"]) == (True, False)
    assert second["repeats"][0]["times"] == 6
    assert second["repeats"][0]["left_over"] == 1
    assert codes(record) == ["row-does-not-close", "thread-uncalibrated"]
    (finding, _) = record["findings"]
    assert (finding["file"], finding["line"], finding["column"]) == ("shells.border", 4, 1)
    assert finding["round"] == 2


def test_runs_make_motifs(border: Border) -> None:
    write(shells_border=SHELLS)
    ran = border("count", "shells.border", "--runs", "6,6,3,3", "--json")
    (work,) = json.loads(ran.out)["works"]
    assert work["places"] == 18
    assert [m["motif"] for m in work["rounds"][0]["motifs"]] == [f"edge.{i}" for i in (1, 2, 3, 4)]
    assert {m["section"] for m in work["rounds"][0]["motifs"]} == {"edge"}


def test_an_edge_is_closed_unless_it_is_open(border: Border) -> None:
    write(shells_border=SHELLS)
    for arguments, closed in (((), True), (("--open",), False)):
        ran = border("count", "shells.border", "--loops", "12", "--json", *arguments)
        assert json.loads(ran.out)["works"][0]["closed"] is closed


def test_a_project_is_counted_whole_or_one_edge_of_it(border: Border) -> None:
    write(two_toml=PROJECT, lace__shells_border=SHELLS)
    record = json.loads(border("count", "two.toml", "--json").out)
    assert record["name"] == "Two edges"
    assert [(w["edge"], w["places"], w["border"]) for w in record["works"]] == [
        ("neck", 12, "lace/shells.border"),
        ("cuff", 9, "lace/shells.border"),
    ]
    one = json.loads(border("count", "two.toml", "--json", "--work", "cuff").out)
    assert [w["edge"] for w in one["works"]] == ["cuff"]
    assert one["works"][0] == record["works"][1]


def test_with_several_edges_a_finding_says_which(border: Border) -> None:
    write(two_toml=PROJECT, lace__shells_border=SHELLS)
    ran = border("count", "two.toml")
    assert ran.code == 1
    assert "lace/shells.border:4:1: error: cuff: round 2 does not close" in ran.err
    assert "neck: round 2" not in ran.err
    alone = border("count", "two.toml", "--work", "cuff")
    assert "error: round 2 does not close" in alone.err


def test_adjustments_of_the_project_are_made(border: Border) -> None:
    adjust = '[[work.adjust]]\nround = 2\nat = "cuff.2"\nby = 1\n'
    write(two_toml=PROJECT + adjust, lace__shells_border=SHELLS)
    ran = border("count", "two.toml", "--work", "cuff", "--json")
    assert ran.code == 0, ran.out
    (second,) = json.loads(ran.out)["works"][0]["rounds"][1:]
    assert second["closes"]
    assert second["adjustments"][0]["at"] == "cuff.2"
    assert second["adjustments"][0]["by"] == 1
    assert "cuff.2: 1 space more passed over" in border("count", "two.toml", "--work", "cuff").out


def test_what_a_worked_round_came_out_at_is_counted_on_from(border: Border) -> None:
    found = "done = 1\nfound = { round = 1, spaces = 8 }\n"
    write(two_toml=PROJECT + found, lace__shells_border=SHELLS)
    ran = border("count", "two.toml", "--work", "cuff", "--json")
    assert ran.code == 0, ran.out
    first, second = json.loads(ran.out)["works"][0]["rounds"]
    assert (first["stitches"], first["spaces"], first["closes"]) == ({"sc": 8}, 8, True)
    assert (first["found"], first["adjustments"]) == ({"spaces": 8}, [])
    assert (second["stitches"], second["closes"]) == ({"dc": 20, "sc": 4}, True)
    assert "found" not in second
    told = border("count", "two.toml", "--work", "cuff").out
    assert "round 1, worked already\n" in told
    assert "found    8 spaces; counted on from there\n" in told


def test_what_is_said_of_worked_rounds_and_cannot_be_is_pointed_at(border: Border) -> None:
    said = "done = 7\nfound = { round = 1, spaces = 40 }\n"
    write(two_toml=PROJECT + said, lace__shells_border=SHELLS)
    ran = border("count", "two.toml")
    assert ran.code == 1
    assert "two.toml:15:8: error: cuff: 7 rounds are said to be done" in ran.err
    assert "two.toml:16:9: error: cuff: round 1 cannot come out at 40 spaces" in ran.err
    assert "the border has rounds 1 to 2" in ran.err


def test_a_worked_round_that_does_not_close_does_not_fail(border: Border) -> None:
    write(two_toml=PROJECT + "done = 2\n", lace__shells_border=SHELLS)
    ran = border("count", "two.toml", "--work", "cuff")
    assert ran.code == 0
    assert "every round still to be worked closes" in ran.out
    assert "round 2, worked already: does not close" in ran.out
    assert "[worked-does-not-close]" in ran.err
    record = json.loads(border("count", "two.toml", "--work", "cuff", "--json").out)
    assert [r["closes"] for r in record["works"][0]["rounds"]] == [True, False]
    assert record["works"][0]["closes"] is False
    checked = border("check", "two.toml")
    assert "4 rounds on 2 edges, every one still to be worked closes" in checked.out


def test_thread_of_the_project_is_reckoned_with(border: Border) -> None:
    thread = '[thread]\nsize = "60"\nhook_mm = 0.75\nball_g = 10\n'
    write(two_toml=PROJECT + thread, lace__shells_border=SHELLS)
    ran = border("count", "two.toml")
    said = " ".join(ran.out.split())
    assert "for No. 60 cotton and a 0.75 mm hook good to 40 % either way" in said
    assert "1 ball of 10 g" in said


def test_every_json_keeps_to_the_schema(border: Border) -> None:
    write(two_toml=PROJECT, lace__shells_border=SHELLS, bad_border="round 1: foo\n")
    for arguments in (
        ("count", "two.toml"),
        ("count", "lace/shells.border", "--loops", "7"),
        ("count", "bad.border", "--loops", "7"),
        ("count", "bad.border"),
        ("count", "gone.toml"),
    ):
        jsonschema.validate(json.loads(border(*arguments, "--json").out), schema())
    of_sheets = schema() | {"$ref": "#/$defs/SheetRecord"}
    for arguments in (
        ("sheet", "two.toml"),
        ("sheet", "lace/shells.border", "--loops", "12"),
        ("sheet", "bad.border", "--loops", "7"),
    ):
        jsonschema.validate(json.loads(border(*arguments, "--json").out), of_sheets)


def test_the_sheet_is_one_page_or_one_text(border: Border) -> None:
    write(two_toml=PROJECT, lace__shells_border=SHELLS)
    page = border("sheet", "two.toml")
    assert page.code == 1  # the shells do not close on the cuff
    assert page.out.startswith("<!DOCTYPE html>") and page.out.endswith("</html>\n")
    assert "row-does-not-close" in page.err
    text = border("sheet", "two.toml", "--work", "neck", "--text")
    assert text.code == 0 and text.out.startswith("Two edges\n=========\n")
    assert "cuff" not in text.out and "[ ] round 2 is worked" in text.out
    plain = border("sheet", "lace/shells.border", "--loops", "12", "--text")
    assert plain.code == 0 and "[ ] repeat 12: 1 sc, 3 ch; 12 sc, 36 ch so far" in plain.out


def test_there_is_no_sheet_of_what_cannot_be_counted(border: Border) -> None:
    write(lace__shells_border=SHELLS)
    ran = border("sheet", "lace/shells.border")
    assert (ran.code, ran.out) == (2, "")
    assert "border sheet lace/shells.border --loops 78" in ran.err
    assert border("sheet", "gone.toml").out == ""


def test_the_same_input_gives_the_same_bytes(tmp_path: Path) -> None:
    (tmp_path / "two.toml").write_text(PROJECT)
    (tmp_path / "lace").mkdir()
    (tmp_path / "lace" / "shells.border").write_text(SHELLS)
    seen = set()
    for seed in ("1", "2", "3"):
        for more in ((), ("--json",)):
            ran = subprocess.run(
                [sys.executable, "-m", "border", "count", "two.toml", *more],
                cwd=tmp_path,
                env={**os.environ, "PYTHONHASHSEED": seed, "COLUMNS": seed * 2},
                capture_output=True,
                check=False,
            )
            assert ran.returncode == 1, ran.stderr
            seen.add((more, ran.stdout, ran.stderr))
    assert len(seen) == 2


# --- usage --------------------------------------------------------------------


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        ((), "say what is to be done"),
        (("cuont", "x"), 'there is no command "cuont": did you mean count?'),
        (
            ("knit", "x"),
            f'there is no command "knit": there are {", ".join(COMMANDS)}',
        ),
        (("count",), "FILE is missing"),
        (("count", "a.border", "--loops"), "--loops needs a value behind it"),
        (("count", "a.border", "--loops", "many"), '"many" is no number of loops'),
        (("count", "a.border", "--loops", "0"), '"0" is no number of loops'),
        (("count", "a.border", "--loops", "-3"), "-3"),
        (("count", "a.border", "--loops", "٣"), "is no number of loops"),
        (("count", "a.border", "--loops", "9" * 5000), "is no number of loops"),
        (("count", "a.border", "--runs", "6,six"), '"6,six" is no list of runs'),
        (("count", "a.border", "--runs", "0,0"), "give from 1 to 1000000 loops in all"),
        (("count", "a.border", "--loops", "3", "--runs", "3"), "not allowed with"),
        (("count", "a.border", "--open"), "--open goes with --loops or --runs"),
        (("count", "a.border", "--work", "neck"), "--work picks an edge of a project"),
        (("count", "a.toml", "--loops", "3"), "a project says itself what its edges are"),
        (("count", "a.border", "b.border"), "b.border means nothing here"),
        (("count", "a.border", "--lops", "3"), "means nothing here"),
        (("count", "a.border", "--runs", "6", "6", "3"), "one word: --runs 6,6,3"),
        (("yoke", "a.border"), "a.border is no project"),
    ],
)
def test_wrong_usage_is_explained(border: Border, arguments: tuple[str, ...], said: str) -> None:
    ran = border(*arguments)
    assert ran.code == 2
    assert ran.out == ""
    assert ran.err.startswith("border: ")
    assert said in ran.err
    assert "Traceback" not in ran.err


@pytest.mark.parametrize(
    "command", ["count", "close", "adjust", "thread", "sheet", "write", "flat", "chart"]
)
def test_a_project_without_a_border_is_told_of(border: Border, command: str) -> None:
    write(bare_toml='format = 1\n[[edge]]\nname = "cuff"\nplaces = 18\n')
    assert "no border is worked in bare.toml [nothing-worked]" in border(command, "bare.toml").err


def test_an_edge_that_no_work_is_done_on_is_wrong_usage(border: Border) -> None:
    write(two_toml=PROJECT, lace__shells_border=SHELLS)
    ran = border("count", "two.toml", "--work", "hem")
    assert ran.code == 2
    assert 'no work is done on an edge called "hem"' in ran.err
    assert "the edges worked are: neck, cuff" in ran.err


def test_a_border_text_needs_an_edge_to_be_counted(border: Border) -> None:
    write(shells_border=SHELLS, bad_border="terms: us\nround 1: 1 foo in each loop.\n")
    ran = border("count", "shells.border")
    assert ran.code == 2
    assert ran.out == ""
    assert "[edge-needed]" in ran.err
    assert "border count shells.border --loops 78" in ran.err
    assert "[unknown-word]" in border("count", "bad.border").err


def test_help_and_version(border: Border) -> None:
    ran = border("--version")
    assert ran == Ran(0, f"border {__version__}\n", "")
    helped = border("--help")
    assert helped.code == 0
    for command in ("new", "check", "count", "yoke", "schema"):
        assert re.search(rf"^ +{command} ", helped.out, re.MULTILINE)
        assert border(command, "--help").code == 0


# --- schema, yoke, colour -----------------------------------------------------


def test_schema_prints_the_schema(border: Border) -> None:
    ran = border("schema")
    assert ran.code == 0
    assert json.loads(ran.out) == schema()


def test_colour_follows_the_terminal_and_no_color(
    border: Border, monkeypatch: pytest.MonkeyPatch
) -> None:
    write(shells_border=SHELLS)
    count = ("count", "shells.border", "--loops", "13")
    monkeypatch.delenv("NO_COLOR", raising=False)
    monkeypatch.setenv("TERM", "xterm")
    monkeypatch.setenv("FORCE_COLOR", "1")
    plain = border(*count)
    assert "\x1b" not in plain.out + plain.err
    monkeypatch.setattr("border.cli.printing.is_terminal", lambda stream: True)
    coloured = border(*count)
    assert "\x1b[" in coloured.out
    assert "\x1b[" in coloured.err
    monkeypatch.setenv("NO_COLOR", "1")
    still = border(*count)
    assert "\x1b" not in still.out + still.err


def test_a_reader_that_goes_away_is_no_fault(tmp_path: Path) -> None:
    (tmp_path / "shells.border").write_text(SHELLS)
    ran = subprocess.run(
        f"{sys.executable} -m border count shells.border --runs 2,1,{'1,2,3,' * 3000}1 | head -1",
        shell=True,
        cwd=tmp_path,
        capture_output=True,
        text=True,
        check=False,
    )
    assert ran.stdout == "edge: Shells\n"
    assert "Traceback" not in ran.stderr
    assert "BrokenPipe" not in ran.stderr
