"""The command line, from the outside: what is printed where, and the exit codes."""

from __future__ import annotations

import contextlib
import io
import json
import os
import re
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any, NamedTuple

import jsonschema
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from border import __version__
from border.arguments import COMMANDS
from border.cli import main
from border.cli.files import MOST_BYTES
from border.showing.schema import schema
from border.starting import made, next_question
from border.yoke.answers import Value


def starter() -> dict[str, str]:
    """The project that `border new cuff` writes where nothing is said."""
    said: dict[str, Value] = {}
    while question := next_question("cuff", said):
        said[question.key] = question.usual(said)
    return made("cuff", said).files


STARTER = starter()

SHELLS = """\
border: Shells
terms: us
round 1: *1 sc in next loop, ch 3; repeat from *.
round 2: *5 dc in next space, 1 sc in next space; repeat from *.
"""

PROJECT = """\
format = 1
name = "Two edges"
[[edge]]
name = "neck"
places = 12
[[edge]]
name = "cuff"
runs = [{ section = "cuff", motifs = 3, places = 3 }]
[[work]]
edge = "neck"
border = "lace/shells.border"
[[work]]
edge = "cuff"
border = "lace/shells.border"
"""


class Ran(NamedTuple):
    code: int
    out: str
    err: str


Border = Callable[..., Ran]


@pytest.fixture
def border(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> Border:
    """Runs the program in an empty folder of its own."""
    monkeypatch.chdir(tmp_path)

    def run(*arguments: str) -> Ran:
        code = main(arguments)
        return Ran(code, *capsys.readouterr())

    return run


def write(**files: str) -> None:
    """Files in the folder: `shells_border` is shells.border."""
    for name, text in files.items():
        path = Path(re.sub("_(border|toml)$", r".\1", name).replace("__", "/"))
        path.parent.mkdir(exist_ok=True)
        path.write_text(text, encoding="utf-8", newline="")


def codes(record: Any) -> list[str]:
    return [f["code"] for f in record["findings"]]


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


# --- text faults --------------------------------------------------------------


def test_nothing_is_counted_behind_a_row_that_cannot_be_made_out(border: Border) -> None:
    text = SHELLS.replace("5 dc in next space", "5 dc in nxt spcae") + "round 3: as round 1.\n"
    write(bad_border=text)
    ran = border("count", "bad.border", "--loops", "12")
    assert ran.code == 1
    assert "nothing is counted after round 1: mend the text first" in ran.out
    assert "[unknown-word]" in ran.err
    assert "no-such-row" not in ran.err


def test_what_is_said_of_rounds_behind_it_waits(border: Border) -> None:
    said = 'done = 2\nfound = { round = 2, groups = 4 }\n[[work.adjust]]\nround = 2\nat = "cuff.2"\nby = 1\n'
    text = SHELLS.replace("5 dc in next space", "5 dc in nxt spcae")
    write(two_toml=PROJECT + said, lace__shells_border=text)
    record = json.loads(border("count", "two.toml", "--work", "cuff", "--json").out)
    assert set(codes(record)) == {"unknown-word", "thread-uncalibrated"}
    assert record["works"][0]["rounds"][0]["round"] == 1


def test_rounds_can_be_copied_from_another_file(border: Border) -> None:
    write(
        lace__a_border='terms: us\nrounds 1-2: as rounds 1-2 of "deep/b.border".\n',
        lace__deep__b_border=SHELLS,
    )
    ran = border("count", "lace/a.border", "--loops", "12", "--json")
    assert ran.code == 0, ran.out
    assert json.loads(ran.out)["works"][0]["rounds"][1]["stitches"] == {"dc": 30, "sc": 6}


def test_a_file_to_copy_from_that_is_not_there_is_pointed_at(border: Border) -> None:
    write(a_border='terms: us\nround 1: as round 1 of "gone.border".\n')
    ran = border("check", "a.border")
    assert ran.code == 2
    assert re.search(r"a\.border:2:\d+: error: gone\.border cannot be read", ran.err)


def test_faults_of_the_file_copied_from_are_told_there(border: Border) -> None:
    write(
        a_border='terms: us\nround 1: as round 1 of "b.border".\n',
        b_border="terms: us\nround 1: 1 frobnicate in each loop.\n",
    )
    ran = border("count", "a.border", "--loops", "3")
    assert ran.code == 1
    assert "b.border:2:12: error:" in ran.err
    assert "no round could be counted" in ran.out


def test_files_that_copy_each_other_in_a_circle_are_found(border: Border) -> None:
    write(
        a_border='terms: us\nround 1: as round 1 of "./b.border".\n',
        b_border='terms: us\nround 1: as round 1 of "a.border".\n',
    )
    ran = border("check", "a.border")
    assert ran.code == 1
    assert "[copies-itself]" in ran.err


# --- check --------------------------------------------------------------------


def test_check_of_a_border_text_alone_reads_it(border: Border) -> None:
    write(shells_border=SHELLS)
    said = "no faults (the text reads well; with --loops or --runs it is counted too)"
    assert border("check", "shells.border") == Ran(0, f"shells.border: {said}\n", "")


def test_check_counts_where_there_is_an_edge(border: Border) -> None:
    write(shells_border=SHELLS)
    assert border("check", "shells.border", "--loops", "12").code == 0
    ran = border("check", "shells.border", "--loops", "13")
    assert ran.code == 1
    assert ran.out == "shells.border: 1 fault\n"
    assert "[row-does-not-close]" in ran.err


def test_check_takes_several_files_and_exits_with_the_worst(border: Border) -> None:
    write(two_toml=PROJECT, lace__shells_border=SHELLS, bad_border="round 1: foo\n")
    ran = border("check", "lace/shells.border", "two.toml", "bad.border")
    assert ran.code == 1
    assert [line.split(":")[0] for line in ran.out.splitlines()] == [
        "lace/shells.border",
        "two.toml",
        "bad.border",
    ]
    assert "bad.border:1:10: error:" in ran.err
    assert border("check", "lace/shells.border", "gone.border").code == 2


def test_check_prints_findings_as_json_in_place_of_words(border: Border) -> None:
    write(bad_border="round 1: foo\n")
    ran = border("check", "bad.border", "--json")
    record = json.loads(ran.out)
    assert ran.err == ""
    assert {"terms-missing", "unknown-word"} <= set(codes(record))
    jsonschema.validate(record, schema() | {"$ref": "#/$defs/CheckRecord"})


def test_check_lists_the_readings_of_every_round(border: Border) -> None:
    row = "round 1: *skip 3 loops, 1 dc in 4th loop, ch 3; repeat from *.\n"
    write(perhaps_border=f"terms: us\n{row}")
    plain = border("check", "perhaps.border", "--loops", "12")
    assert "as it is read" not in plain.out
    ran = border("check", "perhaps.border", "--loops", "12", "--readings")
    assert ran.code == 1
    said = " ".join(ran.out.split())
    assert "round 1 as it is read: does not come out if the 4th is counted" in said
    assert "comes out, 3 times write 1 dc in next loop" in said
    record = json.loads(
        border("check", "perhaps.border", "--loops", "12", "--readings", "--json").out
    )
    jsonschema.validate(record, schema() | {"$ref": "#/$defs/CheckRecord"})
    ((taken, other),) = [edge["readings"] for edge in record["readings"]]
    assert (taken["taken"], taken["comes_out"]) == (True, False)
    assert (other["taken"], other["comes_out"], other["times"]) == (False, True, [3])


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
        (("count", "a.border", "--runs", "0,0"), "give from 1 to 5000000 loops in all"),
        (("count", "a.border", "--loops", "3", "--runs", "3"), "not allowed with"),
        (("count", "a.border", "--open"), "--open goes with --loops or --runs"),
        (("count", "a.border", "--work", "neck"), "--work picks an edge of a project"),
        (("count", "a.toml", "--loops", "3"), "a project says itself what its edges are"),
        (("count", "a.border", "b.border"), "b.border means nothing here"),
        (("count", "a.border", "--lops", "3"), "means nothing here"),
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


# --- files --------------------------------------------------------------------


def unreadable(border: Border, name: str) -> str:
    ran = border("count", name, "--loops", "3")
    assert ran.code == 2
    assert ran.out == ""
    assert "[file-unreadable]" in ran.err
    assert "Traceback" not in ran.err
    as_json = border("check", name, "--json")
    assert as_json.code == 2
    assert codes(json.loads(as_json.out)) == ["file-unreadable"]
    return ran.err


def test_files_that_cannot_be_read(border: Border) -> None:
    Path("folder.border").mkdir()
    Path("empty.border").write_text(" \n\n")
    Path("bytes.border").write_bytes(b"terms: us\nround 1: caf\xe9\n")
    Path("large.border").write_text("#" * (MOST_BYTES + 1))
    os.mkfifo("pipe.border")
    assert "there is no such file" in unreadable(border, "gone.border")
    assert "is a folder" in unreadable(border, "folder.border")
    assert "is empty" in unreadable(border, "empty.border")
    assert "is not UTF-8 text (line 2)" in unreadable(border, "bytes.border")
    assert "is larger than 1 MB" in unreadable(border, "large.border")
    assert "is no plain file" in unreadable(border, "pipe.border")
    assert "cannot be read" in unreadable(border, "a\0.border")
    assert "cannot be read" in unreadable(border, "x" * 5000)


def test_a_file_that_may_not_be_read(border: Border, monkeypatch: pytest.MonkeyPatch) -> None:
    write(shells_border=SHELLS)

    def refuse(*_: object, **__: object) -> None:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr("builtins.open", refuse)
    ran = border("count", "shells.border", "--loops", "3")
    assert ran.code == 2
    assert "it may not be read or written by you" in ran.err


def test_a_border_of_a_project_that_is_not_there_is_pointed_at(border: Border) -> None:
    write(two_toml=PROJECT)
    ran = border("count", "two.toml")
    assert ran.code == 2
    assert "two.toml:11:10: error: lace/shells.border cannot be read" in ran.err
    assert ran.err.count("[file-unreadable]") == 1


def test_a_mark_at_the_head_of_a_file_and_other_line_ends_change_nothing(border: Border) -> None:
    write(shells_border=SHELLS, other_border="\ufeff" + SHELLS.replace("\n", "\r\n"))
    plain = border("count", "shells.border", "--loops", "13")
    other = border("count", "other.border", "--loops", "13")
    assert other.out == plain.out
    assert other.err == plain.err.replace("shells.border", "other.border")


def test_a_large_file_is_read(border: Border) -> None:
    write(shells_border=SHELLS + "#" * (MOST_BYTES - len(SHELLS)))
    assert border("count", "shells.border", "--loops", "12").code == 0


# --- new ----------------------------------------------------------------------


def test_new_makes_a_project_that_works(border: Border) -> None:
    ran = border("new", "my cuff")
    assert ran.code == 0
    assert ran.err == ""
    assert sorted(p.name for p in Path("my cuff").iterdir()) == sorted(STARTER)
    assert "border count 'my cuff/cuff.toml'" in ran.out
    counted = border("count", "my cuff/cuff.toml")
    assert counted.code == 0
    assert "every round closes" in counted.out
    assert "warning" not in counted.err


def test_new_overwrites_nothing(border: Border) -> None:
    Path("there").mkdir()
    Path("file").write_text("mine")
    Path("link").symlink_to("nowhere")
    for name in ("there", "file", "link", "."):
        ran = border("new", name)
        assert ran.code == 2
        assert "there is already something" in ran.err
    assert list(Path("there").iterdir()) == []
    assert Path("file").read_text() == "mine"
    assert sorted(os.listdir()) == ["file", "link", "there"]


def test_new_says_where_it_cannot_make_a_folder(border: Border) -> None:
    Path("file").write_text("mine")
    for name in ("gone/cuff", "file/cuff", "a\0b", ""):
        ran = border("new", name)
        assert ran.code == 2
        assert "cannot be made" in ran.err
    assert os.listdir() == ["file"]


def test_new_leaves_no_half_of_a_project(border: Border, monkeypatch: pytest.MonkeyPatch) -> None:
    def fail(*_: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("os.rename", fail)
    ran = border("new", "cuff")
    assert ran.code == 2
    assert "no space left on device" in ran.err
    assert os.listdir() == []


def test_new_in_json(border: Border) -> None:
    record = json.loads(border("new", "cuff", "--json").out)
    assert record["made"] == [f"cuff/{name}" for name in STARTER]


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


# --- whatever is written ------------------------------------------------------

SCRAPS = (
    *(
        "(",
        ")",
        "[",
        "*",
        ",",
        ";",
        ".",
        ":",
        '"',
        "|",
        "#",
        "--",
        "\n",
        "\t",
        "\x00",
        "\u202e",
        "é",
    ),
    *("round 2:", "over each motif:", "elsewhere:", "at each joint:", "as round 1 of", "turn"),
    *(
        "repeat from *",
        "in each loop",
        "in next space",
        "skip 2",
        "ch 3",
        "999999999",
        "to last 2 st",
    ),
    *("[[work]]", "[[edge]]", "[yoke]", "places = 0", "closed = false", "= 1", "{", "]"),
)


@settings(
    max_examples=120,
    deadline=None,
    derandomize=True,
    suppress_health_check=[HealthCheck.function_scoped_fixture],
)
@given(
    name=st.sampled_from(sorted(STARTER)),
    cut=st.tuples(st.integers(0, 600), st.integers(0, 30)),
    scraps=st.lists(st.sampled_from(SCRAPS), max_size=4),
    command=st.sampled_from(("count", "check", "yoke")),
    as_json=st.booleans(),
)
def test_whatever_is_written_there_is_an_answer(
    tmp_path: Path,
    name: str,
    cut: tuple[int, int],
    scraps: list[str],
    command: str,
    as_json: bool,
) -> None:
    """A starter project with something cut out and something put in is told of, and no more."""
    start, length = cut
    text = STARTER[name]
    files = STARTER | {name: f"{text[:start]} {' '.join(scraps)} {text[start + length :]}"}
    for each, written in files.items():
        (tmp_path / each).write_text(written, encoding="utf-8")
    out, err = io.StringIO(), io.StringIO()
    with contextlib.redirect_stdout(out), contextlib.redirect_stderr(err):
        code = main([command, str(tmp_path / "cuff.toml"), *(["--json"] if as_json else [])])
    if as_json:
        severities = {f["severity"] for f in json.loads(out.getvalue())["findings"]}
        assert ("error" in severities) == (code != 0)
    else:
        assert (" error: " in err.getvalue()) == (code != 0)


# --- write --------------------------------------------------------------------------------


def test_write_prints_border_texts_that_can_be_counted(border: Border) -> None:
    write(project_toml=PROJECT, lace__shells_border=SHELLS)
    ran = border("write", "project.toml", "--work", "neck", "--terms", "uk")
    assert ran.code == 0
    assert ran.err == ""
    assert (
        ran.out
        == """\
# for neck: a closed edge of 12 loops
border: Shells
terms: uk

round 1: *1 dc in next loop, ch 3; repeat from * 12 times in all. (12 dc, 12 spaces)
round 2: *5 tr in next space, 1 dc in next space; repeat from * 6 times in all.
    (30 tr, 6 dc)
"""
    )
    write(written_border=ran.out)
    assert border("count", "written.border", "--loops", "12").code == 0
    ran = border("count", "written.border", "--loops", "14")
    assert ran.code == 1
    assert "[row-does-not-close]" in ran.err


def test_write_gives_every_piece_of_work(border: Border) -> None:
    write(project_toml=PROJECT, lace__shells_border=SHELLS)
    ran = border("write", "project.toml", "--json")
    record = json.loads(ran.out)
    jsonschema.validate(record, {**schema(), "$ref": "#/$defs/WriteRecord"})
    assert [(w["edge"], w["border"], w["terms"]) for w in record["works"]] == [
        ("neck", "lace/shells.border", "us"),
        ("cuff", "lace/shells.border", "us"),
    ]
    texts = [w["text"] for w in record["works"]]
    assert border("write", "project.toml").out == "\n".join(texts)
    assert ran.code == 1  # nine spaces do not close in round 2, and that is told here too
    assert [f["code"] for f in record["findings"]] == ["row-does-not-close"]


def test_write_needs_an_edge_and_terms_that_there_are(border: Border) -> None:
    write(shells_border=SHELLS)
    ran = border("write", "shells.border")
    assert (ran.code, ran.out) == (2, "")
    assert "border write shells.border --loops 78" in ran.err
    ran = border("write", "shells.border", "--loops", "6", "--terms", "french")
    assert ran.code == 2
    assert '--terms: "french" names no terms: give us, uk, early' in ran.err


def test_a_border_that_is_not_there_is_told_once(border: Border) -> None:
    ran = border("count", "nothing.border")
    assert (ran.code, ran.out) == (2, "")
    assert ran.err.count("error:") == 1 and "edge-needed" not in ran.err
