"""`border adjust`: what it prints, its record, and what it writes into a project."""

from __future__ import annotations

import json
import os
import stat
from collections.abc import Callable
from pathlib import Path
from typing import Any, NoReturn

import jsonschema
import pytest

from border.showing.schema import schema

SHELLS = """\
border: Shells
terms: uk
round 1: *1 dc in next loop, ch 3, skip 2 loops; repeat from *.
round 2: *5 tr in next space, 1 dc in next space; repeat from *.
round 3: *1 dc in next dc, ch 5; repeat from *.
"""

# 33 loops make 11 spaces, and round 2 takes two at a time
NECK_WORK = '[[work]]\nedge = "neck"\nborder = "shells.border"   # as it is\n'
PROJECT = f"""\
format = 1
name = "Two edges"

[[edge]]
name = "neck"
runs = [{{ section = "front", motifs = 3, places = 6 }}, {{ section = "back", motifs = 3, places = 5 }}]

[[edge]]
name = "cuff"
places = 24

{NECK_WORK}
[[work]]
edge = "cuff"
border = "shells.border"
"""
PLAN = '\n[[work.adjust]]\nround = 2\nat = "back.2"\nby = 1\n'

Told = tuple[int, str, str]
Run = Callable[..., Told]


@pytest.fixture
def border(border: Run, tmp_path: Path) -> Run:
    """Runs `border` beside the files above: exit code, what it prints, what it finds."""
    (tmp_path / "shells.border").write_text(SHELLS, encoding="utf-8")
    (tmp_path / "two.toml").write_text(PROJECT, encoding="utf-8")
    return border


def lines(told: Told) -> list[str]:
    """The lines printed, without the layout."""
    return [" ".join(line.split()) for line in told[1].splitlines() if line.strip()]


def record(told: Told) -> Any:
    found = json.loads(told[1])
    jsonschema.validate(found, {"$ref": "#/$defs/AdjustRecord", "$defs": schema()["$defs"]})
    return found


# --- what it prints ---------------------------------------------------------------------


def test_the_plan_of_every_piece_of_work(border: Run) -> None:
    told = border("adjust", "two.toml")
    assert (told[0], told[2]) == (0, "")
    assert lines(told) == [
        "neck: Shells",
        "closed edge of 33 loops on 6 motifs; stitch names: UK",
        "as it stands round 2 does not close: 1 space is left over on back.3; a repeat",
        "takes 2 spaces and fits 5 times",
        "ease in 1 place (1400 points)",
        "round 2, at back.2 1 space more passed over, after repeat 4",
        "cuff: Shells",
        "closed edge of 24 loops; stitch names: UK",
        "as it stands every round closes: nothing is to be eased in",
        "to put the plan into the project: border adjust two.toml --write",
    ]
    assert Path("two.toml").read_text(encoding="utf-8") == PROJECT


def test_one_piece_of_work_and_nothing_to_do(border: Run) -> None:
    told = border("adjust", "two.toml", "--work", "cuff")
    assert (told[0], told[2]) == (0, "")
    assert lines(told) == [
        "cuff: Shells",
        "closed edge of 24 loops; stitch names: UK",
        "as it stands every round closes: nothing is to be eased in",
    ]


def test_several_plans_and_what_each_pays_for(border: Run) -> None:
    code, out, _ = told = border("adjust", "two.toml", "--work", "neck", "--all", "3")
    assert code == 0
    assert [line for line in lines(told) if line[1:3] == ". "] == [
        "1. ease in 1 place (1400 points)",
        "2. ease in 1 place (1480 points)",
        "3. ease in 1 place (1800 points)",
    ]
    assert "2, at back.2 1 space worked twice, after repeat 4" in " ".join(lines(told))
    assert "paid for places 1000, showy round 300, little seen 100" in lines(told)
    assert out.endswith(
        "to put the first of the plans into the project: border adjust two.toml --write\n"
    )


def test_how_the_repeats_lie(border: Run) -> None:
    told = border("adjust", "two.toml", "--work", "neck", "--sections")
    at = lines(told).index("how the repeats lie: where the first of them begins, the last ends")
    assert lines(told)[at + 1 : at + 7] == [
        "round 1 front: 6 repeats, front.1 loop 1 to front.3 loop 4",
        "back: 5 repeats, back.1 loop 1 to back.3 loop 3",
        "the two sides differ",
        "round 2 front: 3 repeats, front.1 loop 3 to front.3 loop 6",
        "back: 2 repeats, back.1 loop 3 to back.3 loop 5",
        "the two sides differ",
    ]


def test_a_border_text_on_an_edge_that_is_asked_for(border: Run) -> None:
    told = border("adjust", "shells.border", "--runs", "6,6,5")
    assert told[0] == 0
    assert "ease in 1 place (1100 points)" in lines(told)
    assert "round 1, at edge.3 1 loop worked twice, after repeat 5" in lines(told)
    assert lines(told)[-1] == "the plan can go into a project with this edge, as [[work.adjust]]"
    plain = border("adjust", "shells.border", "--loops", "18")
    assert lines(plain)[-1] == "as it stands every round closes: nothing is to be eased in"


def test_where_no_plan_was_found_it_is_an_error(border: Run) -> None:
    code, out, err = border("adjust", "shells.border", "--loops", "2")
    assert code == 1
    assert "points" not in out
    assert "error: no plan was found: nothing eased in makes round 1 close [no-plan]" in err
    assert "help: an edge of 6 loops closes as it is" in err


@pytest.mark.parametrize("n", ["0", "101", "x", "-1", "2.5", ""])
def test_a_number_of_plans_that_is_none(border: Run, n: str) -> None:
    code, out, err = border("adjust", "two.toml", f"--all={n}")
    assert (code, out) == (2, "")
    assert err.startswith(f'border: --all: "{n}" is no number of plans from 1 to 100\n')


def test_what_cannot_be_asked(border: Run) -> None:
    assert border("adjust", "two.toml", "--all")[0] == 2
    code, _, err = border("adjust", "none.toml")
    assert (code, "[file-unreadable]" in err) == (2, True)
    code, _, err = border("adjust", "shells.border")
    assert (code, "[edge-needed]" in err) == (2, True)
    assert "border adjust shells.border --loops 78" in err
    assert border("adjust", "two.toml", "--work", "hem")[0] == 2


# --- the record ----------------------------------------------------------------------------


def test_the_record(border: Run) -> None:
    found = record(border("adjust", "two.toml", "--json", "--all", "2"))
    assert found["findings"] == []
    neck, cuff = found["works"]
    plan = [{"round": 2, "at": "back.2", "by": 1}]
    assert (neck["edge"], neck["border"], neck["closes"]) == ("neck", "shells.border", True)
    assert (neck["plan"], neck["cost"], neck["cheapest"]) == (plan, 1400, True)
    paid = {"place": 1000, "showy": 300, "seen_1": 100}
    assert neck["plans"][0] == {"plan": plan, "cost": 1400, "paid_for": paid}
    assert neck["plans"][1]["paid_for"] == {**paid, "against_curve": 80}
    first = neck["rounds"][0]
    assert (first["round"], first["sides_alike"]) == (1, False)
    assert first["sections"][0] == {
        "section": "front",
        "repeats": 6,
        "begins": {"motif": "front.1", "place": 1},
        "ends": {"motif": "front.3", "place": 4},
    }
    assert (cuff["closes"], cuff["plan"], cuff["cost"]) == (True, [], 0)


def test_the_record_where_there_is_no_plan(border: Run) -> None:
    told = border("adjust", "shells.border", "--loops", "2", "--json")
    found = record(told)
    assert (told[0], told[2]) == (1, "")
    (work,) = found["works"]
    assert (work["closes"], work["plan"], work["plans"], work["rounds"]) == (False, [], [], [])
    assert (work["cost"], work["cheapest"]) == (None, False)
    assert [f["code"] for f in found["findings"]][-1] == "no-plan"


# --- writing it into the project -------------------------------------------------------------


def test_the_plan_is_written_and_the_border_closes(border: Run) -> None:
    assert border("count", "two.toml")[0] == 1
    told = border("adjust", "two.toml", "--write")
    assert told[0] == 0
    assert lines(told)[-1] == "the plan now stands in two.toml"
    text = Path("two.toml").read_text(encoding="utf-8")
    assert text == PROJECT.replace(NECK_WORK, NECK_WORK + PLAN)
    assert border("count", "two.toml")[0] == 0
    again = border("adjust", "two.toml", "--write")
    assert again[0] == 0
    assert "every round closes, adjusted as the file says" in " ".join(lines(again))
    assert "now stands" not in again[1]
    assert Path("two.toml").read_text(encoding="utf-8") == text


def test_only_the_work_that_is_asked_for_is_written(border: Run) -> None:
    two = PROJECT.replace("places = 24", "places = 25")
    Path("two.toml").write_text(two, encoding="utf-8")
    border("adjust", "two.toml", "--work", "neck", "--write")
    assert Path("two.toml").read_text(encoding="utf-8") == two.replace(NECK_WORK, NECK_WORK + PLAN)
    border("adjust", "two.toml", "--work", "cuff", "--write")
    assert border("count", "two.toml")[0] == 0


def test_the_best_of_several_plans_is_written_and_the_record_printed(border: Run) -> None:
    told = border("adjust", "two.toml", "--write", "--all", "3", "--json")
    assert record(told)["works"][0]["plan"] == [{"round": 2, "at": "back.2", "by": 1}]
    assert PLAN in Path("two.toml").read_text(encoding="utf-8")


def test_marks_and_line_ends_are_kept(border: Run) -> None:
    data = b"\xef\xbb\xbf" + PROJECT.replace("\n", "\r\n").encode()
    Path("two.toml").write_bytes(data)
    assert border("adjust", "two.toml", "--write")[0] == 0
    wanted = PROJECT.replace(NECK_WORK, NECK_WORK + PLAN).replace("\n", "\r\n").encode()
    assert Path("two.toml").read_bytes() == b"\xef\xbb\xbf" + wanted


def test_a_border_text_has_no_plan_written_into_it(border: Run) -> None:
    code, out, err = border("adjust", "shells.border", "--loops", "20", "--write")
    assert (code, out) == (2, "")
    assert "--write puts the plan into a project" in err
    assert Path("shells.border").read_text(encoding="utf-8") == SHELLS


def test_a_file_that_cannot_be_put_in_its_place_leaves_the_old_one(
    border: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(*_: object) -> NoReturn:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "replace", full)
    code, out, err = border("adjust", "two.toml", "--write")
    assert (code, out) == (2, "")
    assert err.startswith("border: two.toml cannot be written: no space left on device\n")
    assert "it is as it was" in err
    assert sorted(os.listdir()) == ["shells.border", "two.toml"]
    assert Path("two.toml").read_text(encoding="utf-8") == PROJECT


def test_a_file_that_may_not_be_written_is_left_as_it_is(
    border: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    # whoever runs this may be allowed everything, so the answer of the system is given here
    monkeypatch.setattr(os, "access", lambda *_: False)
    code, _, err = border("adjust", "two.toml", "--write")
    assert code == 2
    assert "it may not be read or written by you" in err
    assert Path("two.toml").read_text(encoding="utf-8") == PROJECT


def test_a_link_is_followed_and_the_mode_kept(border: Run) -> None:
    os.mkdir("kept")
    os.rename("two.toml", "kept/real.toml")
    os.chmod("kept/real.toml", 0o640)
    os.symlink("kept/real.toml", "two.toml")
    assert border("adjust", "two.toml", "--write")[0] == 0
    assert os.readlink("two.toml") == "kept/real.toml"
    assert PLAN in Path("kept/real.toml").read_text(encoding="utf-8")
    assert stat.S_IMODE(os.stat("kept/real.toml").st_mode) == 0o640
    assert os.listdir("kept") == ["real.toml"]


def test_beside_a_work_with_a_fault_the_plan_is_written_and_the_fault_told(border: Run) -> None:
    faulty = '[[work]]\nedge = "neck"\nborder = "shells.border"\ndone = "three"\n\n'
    text = PROJECT.replace(NECK_WORK, faulty + NECK_WORK)
    Path("two.toml").write_text(text, encoding="utf-8")
    code, _, err = border("adjust", "two.toml", "--write")
    assert code == 1
    assert '"done" must be a whole number' in err
    assert Path("two.toml").read_text(encoding="utf-8") == text.replace(NECK_WORK, NECK_WORK + PLAN)


def test_a_plan_that_cannot_be_put_in_for_certain_is_not_written(border: Run) -> None:
    text = PROJECT.replace("[[work]]", "[[wrok]]")
    Path("two.toml").write_text(text, encoding="utf-8")
    code, _, err = border("adjust", "two.toml", "--write")
    assert code == 2
    assert "the plan cannot be put into two.toml for certain" in err
    assert Path("two.toml").read_text(encoding="utf-8") == text
