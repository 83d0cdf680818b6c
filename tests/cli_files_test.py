"""Files from the outside: unreadable, made, written out, and whatever else is in them."""

from __future__ import annotations

import contextlib
import io
import json
import os
from pathlib import Path

import jsonschema
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from outside import PROJECT, SHELLS, STARTER, Border, codes, write

from border.cli import main
from border.cli.files import MOST_BYTES
from border.showing.schema import schema

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


def test_write_needs_no_edge_but_terms_that_there_are(border: Border) -> None:
    write(shells_border=SHELLS)
    ran = border("write", "shells.border", "--terms", "uk")
    assert ran.code == 0
    assert "terms: uk" in ran.out
    ran = border("write", "shells.border", "--loops", "6", "--terms", "french")
    assert ran.code == 2
    assert '--terms: "french" names no terms: give us, uk, early' in ran.err


def test_a_border_that_is_not_there_is_told_once(border: Border) -> None:
    ran = border("count", "nothing.border")
    assert (ran.code, ran.out) == (2, "")
    assert ran.err.count("error:") == 1 and "edge-needed" not in ran.err


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
