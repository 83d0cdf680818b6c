"""Adjustments put into a project file: there they stand, and nothing else has changed."""

from __future__ import annotations

import tomllib
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from yokes import EVERYTHING, FERN

from border.text.source import Source
from border.yoke.project import read_project
from border.yoke.project_written import with_adjustments

Added = dict[int, list[tuple[int, str, int]]]
ONE: Added = {0: [(2, "cuff.1 | cuff.2", -1)]}

HEAD = 'format = 1\n\n[[edge]]\nname = "cuff"\nplaces = 12\n'
WORK = '\n[[work]]\nedge = "cuff"\nborder = "a.border"\n'


def written(text: str, added: Added) -> str:
    after = with_adjustments(Source("p.toml", text), added)
    assert after is not None
    return after


def adjustments(text: str) -> list[list[tuple[int, str, int]]]:
    """The adjustments of each piece of work, read by the program."""
    project, findings = read_project(Source("p.toml", text))
    assert project is not None, findings
    return [[(a.round, a.at, a.by) for a in work.adjustments] for work in project.works]


def without_adjustments(text: str) -> tuple[Any, list[list[Any]]]:
    """All else that the file says, and the adjustments of each work, read by TOML's own rules."""
    data = tomllib.loads(text.removeprefix("\ufeff"))
    return data, [work.pop("adjust", []) for work in data.get("work", [])]


# --- how it looks -------------------------------------------------------------------------


def test_an_adjustment_is_a_table_behind_its_work() -> None:
    table = '\n[[work.adjust]]\nround = 2\nat = "cuff.1 | cuff.2"\nby = -1\n'
    assert written(HEAD + WORK, ONE) == HEAD + WORK + table
    rest = '\n# of the other cuff\n[[edge]]\nname = "other"\nplaces = 3\n'
    assert written(HEAD + WORK + rest, ONE) == HEAD + WORK + table + rest


def test_several_go_in_their_order_behind_those_that_stand() -> None:
    stands = '\n[[work.adjust]]\nround = 5\nat = "x"\nby = 3   # so it was\n'
    text = written(HEAD + WORK + stands, {0: [(2, "b", 1), (1, "a", -2)]})
    assert text.startswith(HEAD + WORK + stands)
    assert adjustments(text) == [[(5, "x", 3), (2, "b", 1), (1, "a", -2)]]


def test_each_work_gets_its_own() -> None:
    text = HEAD + 3 * WORK
    after = written(text, {0: [(1, "a", 1)], 2: [(3, "c", 3)]})
    assert adjustments(after) == [[(1, "a", 1)], [], [(3, "c", 3)]]
    assert written(text, {1: []}) == text


def test_comments_stay_where_they_are() -> None:
    work = '\n[[work]]      # first\nedge = "cuff" # second\nborder = "a.border" # third # and on\n'
    after = written(HEAD + work + "# fourth\n", ONE)
    assert after.startswith(HEAD + work + "\n[[work.adjust]]\n")
    assert after.endswith("by = -1\n# fourth\n")


@pytest.mark.parametrize("end", ["", "  ", " # no newline behind"])
def test_a_file_that_ends_without_a_newline(end: str) -> None:
    text = HEAD + WORK.removesuffix("\n") + end
    after = written(text, ONE)
    assert after.startswith(text + "\n\n[[work.adjust]]\n")
    assert adjustments(after) == [ONE[0]]


def test_lines_end_as_those_of_the_file_do() -> None:
    for text in (HEAD + WORK, (HEAD + WORK).removesuffix("\n")):
        after = written(text.replace("\n", "\r\n"), ONE)
        assert after.replace("\r\n", "").count("\n") == 0
        assert after.replace("\r\n", "\n") == written(text, ONE)


def test_a_mark_at_the_head_of_the_file_stays() -> None:
    assert written("\ufeff" + HEAD + WORK, ONE) == "\ufeff" + written(HEAD + WORK, ONE)


def test_a_found_that_is_a_table_of_its_own_stays_whole() -> None:
    found = "\n[work.found]\nround = 1\nspaces = 3\n"
    after = written(HEAD + WORK + "done = 1\n" + found, ONE)
    assert after.startswith(HEAD + WORK + "done = 1\n" + found + "\n[[work.adjust]]\n")
    assert adjustments(after) == [ONE[0]]


@pytest.mark.parametrize(
    ("before", "after"),
    [
        ("[]", "[NEW]"),
        ("[  ]", "[NEW  ]"),
        ("[ # none yet\n]", "[NEW # none yet\n]"),
        ("[OLD]", "[OLD, NEW]"),
        ("[ OLD ]", "[ OLD, NEW ]"),
        ("[\n  OLD, # why\n]", "[\n  OLD, NEW, # why\n]"),
        ("[\n  OLD # why\n]", "[\n  OLD, NEW # why\n]"),
        ("[OLD, OLD]", "[OLD, OLD, NEW]"),
    ],
)
def test_a_list_of_adjustments_grows_by_one(before: str, after: str) -> None:
    new = '{ round = 2, at = "cuff.1 | cuff.2", by = -1 }'
    old = '{ round = 1, at = "]", by = 1 }'
    before, after = (
        f"adjust = {t.replace('OLD', old).replace('NEW', new)}\n" for t in (before, after)
    )
    assert written(HEAD + WORK + before, ONE) == HEAD + WORK + after


def test_works_in_a_list() -> None:
    top = 'format = 1\nwork = [\n  { edge = "cuff", border = "a.border" },\n'
    top += '  { edge = "cuff", border = "a.border", adjust = [] } ]\n'
    rest = '[[edge]]\nname = "cuff"\nplaces = 12\n'
    after = written(top + rest, {0: [(1, "a", 1), (2, "b", 2)], 1: [(3, "c", 3)]})
    assert adjustments(after) == [[(1, "a", 1), (2, "b", 2)], [(3, "c", 3)]]
    assert after.splitlines()[2] == (
        '  { edge = "cuff", border = "a.border", adjust = '
        '[{ round = 1, at = "a", by = 1 }, { round = 2, at = "b", by = 2 }] },'
    )
    assert after.endswith(rest)


@pytest.mark.parametrize("at", ['the "best".1', "back\\slash.1", "o'clock.1", "Spitze für Öse.3"])
def test_names_with_quotes_in_them(at: str) -> None:
    assert adjustments(written(HEAD + WORK, {0: [(1, at, 1)]})) == [[(1, at, 1)]]
    assert adjustments(written(HEAD + WORK + "adjust = []\n", {0: [(1, at, 1)]})) == [[(1, at, 1)]]


@pytest.mark.parametrize("text", [FERN, EVERYTHING])
def test_a_whole_yoke(text: str) -> None:
    stands = adjustments(text)
    added: Added = {n: [(n + 1, "front.2", 1)] for n in range(len(stands))}
    after = written(text, added)
    assert adjustments(after) == [was + added[n] for n, was in enumerate(stands)]
    assert without_adjustments(after)[0] == without_adjustments(text)[0]


def test_a_work_with_a_fault_is_left_alone_and_the_others_are_counted_without_it() -> None:
    faulty = WORK + "adjust = [{ round = 1 }]\n"
    last = WORK.replace("a.border", "b.border")
    after = written(HEAD + faulty + WORK + faulty + last, {0: [(1, "a", 1)], 1: [(2, "b", 2)]})
    first = '\n[[work.adjust]]\nround = 1\nat = "a"\nby = 1\n'
    second = first.replace("1", "2").replace('"a"', '"b"')
    assert after == HEAD + faulty + WORK + first + faulty + last + second


@pytest.mark.parametrize(
    "text",
    [
        HEAD + WORK + "adjust = [{ round = 1 }]\n",  # a fault, so that the work is not read
        HEAD + WORK.replace("work", "wrok"),  # read as work, but it is not written so
        HEAD,
    ],
)
def test_what_cannot_be_put_in_for_certain_is_not(text: str) -> None:
    assert with_adjustments(Source("p.toml", text), ONE) is None


# --- any project ---------------------------------------------------------------------------

NAMES = st.text(alphabet="ab \"\\'é.|#", max_size=8)
NAMES = NAMES.map(lambda name: " ".join(("x", *name.split())))
ADJUSTMENT = st.tuples(st.integers(1, 9), NAMES, st.sampled_from([-2, -1, 1, 2]))
GAP = st.sampled_from(["", "\n", "# [[work]]\n", '\n# "', "   \n\n"])


def quoted(name: str) -> str:
    return '"' + name.replace("\\", "\\\\").replace('"', '\\"') + '"'


@st.composite
def work_texts(draw: st.DrawFn) -> str:
    """One [[work]], its keys in any order, and adjustments in one of the ways to write them."""
    keys = ['edge = "cuff"', "border = 'a.border'"]
    keys += draw(st.sampled_from([[], ["mirror = [\n'cuff.1', # one\n]"], ['start = """c"""']]))
    stands = draw(st.lists(ADJUSTMENT, max_size=2))
    parts = [f"round = {r}, at = {quoted(at)}, by = {by}" for r, at, by in stands]
    tables = ""
    if draw(st.booleans()):
        between = draw(st.sampled_from([", ", ",\n  ", " , # ,\n"]))
        end = draw(st.sampled_from(["", " ", "\n", " # ]\n"]))
        keys.append(f"adjust = [{between.join(f'{{ {part} }}' for part in parts)}{end}]")
    else:
        tables = "".join(
            "[[ work . adjust ]]\n" + part.replace(", at", "\nat").replace(", by", "\nby") + "\n"
            for part in parts
        )
    keys = draw(st.permutations(keys))
    comment = draw(st.sampled_from(["", "  # }", " # ]"]))
    return "[[work]]\n" + "".join(f"{key}{comment}\n" for key in keys) + draw(GAP) + tables


@st.composite
def project_texts(draw: st.DrawFn) -> str:
    parts = [HEAD[len("format = 1\n") :], *draw(st.lists(work_texts(), min_size=1, max_size=3))]
    text = "format = 1\n" + "".join(f"{part}{draw(GAP)}" for part in draw(st.permutations(parts)))
    text = text if draw(st.booleans()) else text.rstrip("\n")
    return text.replace("\n", "\r\n") if draw(st.booleans()) else text


def is_in(part: str, whole: str) -> bool:
    """Whether all signs of a text stand in another, in their order."""
    signs = iter(whole)
    return all(sign in signs for sign in part)


@given(project_texts(), st.lists(st.lists(ADJUSTMENT, max_size=3), max_size=3))
def test_any_project_stays_as_it_is_but_for_what_is_put_in(
    text: str, new: list[list[tuple[int, str, int]]]
) -> None:
    project, findings = read_project(Source("p.toml", text))
    if project is None or findings:
        return  # a name that came out empty
    number = len(project.works)
    added = dict(enumerate(new[:number]))
    after = written(text, added)
    assert is_in(text, after)
    was, stood = without_adjustments(text)
    is_, stand = without_adjustments(after)
    assert is_ == was
    for n, (before, now) in enumerate(zip(stood, stand, strict=True)):
        told = [{"round": r, "at": at, "by": by} for r, at, by in added.get(n, [])]
        assert now == [*before, *told]
    newline = "\r\n" if "\r\n" in text else "\n"
    assert after.replace("\r\n", "\n").count("\n") == after.count(newline)
