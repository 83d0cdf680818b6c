"""Faults of texts, and `check`, from the outside."""

from __future__ import annotations

import json
import re

import jsonschema
from outside import PROJECT, SHELLS, Border, Ran, codes, write

from border.showing.schema import schema

# --- text faults --------------------------------------------------------------


def test_nothing_is_counted_behind_a_row_that_cannot_be_made_out(border: Border) -> None:
    text = SHELLS.replace("5 dc in next space", "5 dc in nxt spcae") + "round 3: as round 1.\n"
    write(bad_border=text)
    ran = border("count", "bad.border", "--loops", "12")
    assert ran.code == 1
    assert "nothing is counted after round 1: mend the text first" in ran.out
    assert "[unknown-word]" in ran.err
    assert "no-such-row" not in ran.err


def test_a_fault_in_a_figure_s_steps_ends_the_count_where_the_figure_is_worked(
    border: Border,
) -> None:
    rows = "round 1: 1 dc in each st.\nround 2: *1 dc, a leaf, miss 2; repeat from *.\n"
    write(leaf_border=f"terms: uk\nThe leaf is worked as follows: 7 chain; on these, 3 dc.\n{rows}")
    ran = border("count", "leaf.border", "--loops", "24")
    assert "nothing is counted after round 1: mend the text first" in ran.out
    assert 'leaf.border:2:41: error: "on" makes no step here' in ran.err
    for edge in (("--loops", "24"), ()):
        out = border("write", "leaf.border", *edge).out
        assert out.endswith("\n# not written: round 2 and what follows; mend the text first\n")


def test_a_text_that_is_read_twice_is_told_once(border: Border) -> None:
    row = "1st row: 1 long treble in every chain.\n"
    write(one_border=f"terms: uk\nWork on a chain, the number to be even: see below.\n{row}")
    told = border("check", "one.border", "--loops", "24").err.splitlines()
    heads = [line for line in told if line.startswith("one.border:")]
    assert len(heads) > 1
    assert len(set(heads)) == len(heads)


def test_a_repeat_that_is_not_reached_is_said_to_be_none(border: Border) -> None:
    write(wide_border="terms: us\nround 1: dc, working 2 in every 4th stitch.\n")
    out = border("count", "wide.border", "--loops", "24").out
    assert "6 times, each takes 4 loops and makes 5 dc; none left over" in out
    assert "not made; none left over" in out
    told = border("check", "wide.border", "--loops", "24", "--readings").out
    assert "round 1  as it is read: comes out, 6 times" in told
    told = border("check", "wide.border", "--loops", "6", "--readings").out
    assert "round 1  as it is read: comes out, once" in told


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
