"""A slip in one line of a yoke is one fault, and the line to paste mends it."""

from __future__ import annotations

import re

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from yokes import FERN, HEAD, faults, told

from border.showing.starter_project import project_text
from border.starting import next_question
from border.yoke.answers import Value

PASTE = re.compile(r'(?:ring|sides) = \[[^\]]*\]|(?:from|to) = "[^"]*"')
YOKE = FERN.split("[[work]]")[0]
CORNER = (
    'ring = ["neck 2", "join front.2", "hem 5", "join left underarm.1", '
    '"left armhole 0", "join left strap.1"]'
)
UNDERARM = 'ring = ["left armhole 4", "join front.1", "hem 6", "join left underarm.2"]'
STRAP = 'sides = ["left armhole 7", "neck 3"]'


def pastes(help_: str) -> list[str]:
    return PASTE.findall(help_)


def slipped(right: str, wrong: str) -> tuple[str, str, list[str]]:
    """The one fault that a line written wrong is told as: code, message, and the lines to paste.

    Each of them, pasted in place of the wrong line, mends the yoke.
    """
    assert YOKE.count(right) == 1
    text = YOKE.replace(right, wrong)
    ((code, message, help_),) = faults(text)
    lines = pastes(help_)
    assert lines
    for line in lines:
        assert faults(text.replace(wrong, line)) == []
    return code, message, lines


def test_a_joint_forgotten_in_one_ring() -> None:
    code, message, lines = slipped(CORNER, CORNER.replace('"join left underarm.1", ', ""))
    assert code == "ring-faulty"
    assert message == "in the ring of front.1 two edges meet without a joint between them"
    assert lines == [CORNER]


def test_a_joint_forgotten_at_the_end_of_a_ring() -> None:
    code, _, lines = slipped(CORNER, CORNER.replace(', "join left strap.1"', ""))
    assert (code, lines) == ("ring-faulty", [CORNER])


def test_a_joint_forgotten_with_the_edge_of_no_loops_beside_it() -> None:
    wrong = CORNER.replace('"join left underarm.1", "left armhole 0", ', "")
    code, message, lines = slipped(CORNER, wrong)
    assert (code, message) == (
        "joint-one-sided",
        "left underarm.1 is joined to front.1, but the ring of front.1 does not say so",
    )
    assert lines == [CORNER]


def test_a_joint_to_the_wrong_wheel() -> None:
    code, message, lines = slipped(UNDERARM, UNDERARM.replace("front.1", "front.2"))
    assert (code, message) == (
        "joint-one-sided",
        "front.1 is joined to left underarm.1, but the ring of left underarm.1 does not say so",
    )
    assert lines == [UNDERARM]


def test_a_joint_to_a_wheel_that_is_not_there() -> None:
    code, _, lines = slipped(UNDERARM, UNDERARM.replace("front.1", "frnt.1"))
    assert code == "no-such-motif"
    assert lines == [UNDERARM]


def test_an_end_of_a_strip_not_said_or_said_wrongly() -> None:
    ends = 'from = "front.1"\nto = "back.5"'
    for wrong in ('from = "front.1"', 'from = "front.1"\nto = "back.4"'):
        text = YOKE.replace(ends, wrong)
        ((_, _, help_),) = faults(text)
        assert help_ == 'in strip "left strap", write: to = "back.5"'
    ((_, _, help_),) = faults(YOKE.replace(ends, 'to = "back.5"'))
    assert help_ == 'in strip "left strap", write: from = "front.1"'


def test_a_sum_that_is_wrong() -> None:
    code, _, lines = slipped(CORNER, CORNER.replace("hem 5", "hem 6"))
    assert code == "loops-do-not-add-up"
    assert lines == [CORNER.replace("neck 2", "neck 1").replace("hem 5", "hem 6"), CORNER]


def test_a_ring_in_the_wrong_order() -> None:
    wrong = CORNER.replace("left underarm.1", "X").replace("left strap.1", "left underarm.1")
    code, _, lines = slipped(CORNER, wrong.replace("X", "left strap.1"))
    assert code == "does-not-go-together"
    assert lines == [CORNER]


@pytest.mark.parametrize("name", ["left arm hole", "neck", "right armhole"])
def test_a_wrong_name_on_an_edge(name: str) -> None:
    code, _, lines = slipped(STRAP, STRAP.replace("left armhole", name))
    assert code == "edge-names-differ"
    assert lines == [STRAP]


def test_a_wrong_name_in_a_ring_that_is_mirrored_is_one_fault() -> None:
    code, message, lines = slipped(CORNER, CORNER.replace("left armhole", "armhole"))
    assert code == "edge-names-differ"
    assert message == (
        'one edge is called "left armhole" on left underarm.2, but "armhole" where it goes on to '
        "front.1"
    ) or message.endswith('but "armhole" where it goes on to front.1')
    assert lines == [CORNER]


def test_another_number_in_a_joint() -> None:
    by = CORNER.replace("left underarm.1", "left underarm.1 by 2")
    assert slipped(CORNER, by)[::2] == ("joint-uneven", [CORNER])
    by = by.replace("hem 5", "hem 6")  # the sum is right, but the loop is the joint's
    assert slipped(CORNER, by)[::2] == ("joint-uneven", [CORNER])
    by = UNDERARM.replace("front.1", "front.1 by 2").replace("hem 6", "hem 7")
    code, message, lines = slipped(UNDERARM, by)
    assert code == "joint-uneven"
    assert (
        message
        == "the joint of front.1 and left underarm.1 takes up 3 of front.1, but 2 of left underarm.1"
    )
    taken = UNDERARM.replace("armhole 4", "armhole 3").replace("hem 6", "hem 7")
    assert lines == [taken, UNDERARM]


def test_the_caret_is_at_the_line_to_be_changed() -> None:
    wrong = UNDERARM.replace("front.1", "front.2")
    text = YOKE.replace(UNDERARM, wrong)
    (fault,) = told(text)[2]
    assert fault.span is not None
    assert text[fault.span.start : fault.span.end] in wrong


def test_two_slips_apart_are_two_faults_each_with_its_line() -> None:
    text = YOKE.replace(STRAP, STRAP.replace("left armhole", "arm"))
    hem = 'sides = ["neck 5", "hem 5"]'
    text = text.replace(hem, 'sides = ["neck 5", "hem 6"]', 1)
    found = {code: pastes(help_) for code, _, help_ in faults(text)}
    assert found["edge-names-differ"] == [STRAP]
    assert hem in found["loops-do-not-add-up"]


def test_a_fault_is_not_mended_by_what_only_hides_it() -> None:
    """With a joint faulty as well, an edge that meets it is not looked at."""
    text = YOKE.replace(UNDERARM, UNDERARM.replace("front.1", "front.2"))
    text = text.replace(STRAP, STRAP.replace("neck", "nek"))
    found = {code: pastes(help_) for code, _, help_ in faults(text)}
    assert found == {"joint-one-sided": [UNDERARM], "edge-names-differ": [STRAP]}


def test_what_cannot_be_told_from_one_line_is_left_as_it_is() -> None:
    text = HEAD + '[[motif]]\nname = "a"\nring = ["x 13", "join b"]\n'
    text += '[[motif]]\nname = "b"\nring = ["x 16"]\n'
    ((_, _, help_),) = faults(text)
    assert help_ == 'write "join a" between two edges in the ring of b'


# --- any yoke that was asked for ----------------------------------------------------------


@st.composite
def asked_yokes(draw: st.DrawFn) -> str:
    """The project of a yoke of some size, before its work."""
    said: dict[str, Value] = {"shape": "yoke"}
    sizes = {"front": (3, 6), "back": (3, 6), "strap": (1, 4), "underarm": (1, 3)}
    while question := next_question("yoke", said):
        said[question.key] = question.usual(said)
        if question.key in sizes:
            said[question.key] = (draw(st.integers(*sizes[question.key])),)
    return project_text(said).split("# --- the work")[0]


RINGS = re.compile(r"^(?:ring|sides) = \[.*\]$", re.MULTILINE)


@settings(max_examples=120, deadline=None, derandomize=True)
@given(text=asked_yokes(), data=st.data())
def test_a_line_written_wrong_in_any_yoke_is_mended_by_what_is_told(
    text: str, data: st.DataObject
) -> None:
    """Of a ring or the sides of a strip, one item is dropped, renamed, renumbered or moved."""
    spots = list(RINGS.finditer(text))
    spot = data.draw(st.sampled_from(spots))
    items = re.findall(r'"([^"]*)"', spot.group())
    n = data.draw(st.integers(0, len(items) - 1))
    slip = data.draw(st.sampled_from(("name", "number", "joint", "order", "dropped")))
    changed = list(items)
    if slip == "order":
        changed = items[:1] + items[:0:-1] if len(items) > 2 else items[::-1]
    elif slip == "joint":
        assume(items[n].startswith("join"))
        changed[n] = "join back.2"
    elif slip == "dropped":
        assume(items[n].startswith("join"))
        del changed[n]
    elif slip == "name":
        assume(not items[n].startswith("join"))
        changed[n] = "nekc " + items[n].rpartition(" ")[2]
    else:
        assume(items[n].startswith("join"))
        changed[n] = items[n] + " by 2"
    assume(changed != items)
    listed = ", ".join(f'"{item}"' for item in changed)
    wrong = f"{spot.group().split(' = ')[0]} = [{listed}]"
    faulty = text[: spot.start()] + wrong + text[spot.end() :]
    found = faults(faulty)
    ((_, _, help_),) = found
    lines = pastes(help_)
    assert lines, found
    for line in lines:
        mended = text[: spot.start()] + line + text[spot.end() :]
        assert faults(mended) == []
