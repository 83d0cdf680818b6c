"""Rings and joints: loop accounting, strips, and what both sides must agree on."""

from __future__ import annotations

import pytest
from yokes import COLLAR, HEAD, faults, good, ring

PAIR = """
[[motif]]
name = "a"
ring = ["outside 13", "join b"]
[[motif]]
name = "b"
ring = ["join a", "outside 13"]
"""


def test_a_ring_is_shown_as_a_sum() -> None:
    _, report = good(HEAD + PAIR)
    assert (report.motifs, report.joints, report.loops) == (2, 1, 16)
    assert ring(report, "a") == "outside 13 + join b 3 = 16"
    assert [(i.name, i.number, i.is_joint) for i in report.rings[1].items] == [
        ("a", 3, True),
        ("outside", 13, False),
    ]
    assert report.rings[0].adds_up


def test_blanks_in_a_ring_do_not_matter() -> None:
    wide = PAIR.replace('"outside 13", "join b"', '" outside   13", "join  b "')
    assert ring(good(HEAD + wide)[1], "a") == "outside 13 + join b 3 = 16"


def test_a_closed_strip_is_joined_all_round() -> None:
    _, report = good(HEAD + COLLAR)
    assert (report.motifs, report.joints) == (7, 7)
    assert ring(report, "collar.1") == (
        "neck 4 + join collar.2 3 + outside 6 + join collar.7 3 = 16"
    )
    assert ring(report, "collar.7") == (
        "neck 4 + join collar.1 3 + outside 6 + join collar.6 3 = 16"
    )


def test_the_ends_of_a_strip_are_joined_to_from_and_to() -> None:
    text = (
        HEAD
        + """
[[strip]]
name = "bridge"
motifs = 1
sides = ["outside 5", "outside 5"]
from = "a"
to = "b"
[[motif]]
name = "a"
ring = ["outside 13", "join bridge.1"]
[[motif]]
name = "b"
ring = ["outside 13", "join bridge.1"]
"""
    )
    assert ring(good(text)[1], "bridge.1") == "outside 5 + join b 3 + outside 5 + join a 3 = 16"


def test_an_open_end_whose_sides_have_one_name_is_one_run() -> None:
    text = HEAD + '[[strip]]\nname = "band"\nmotifs = 3\nsides = ["rim 5", "rim 5"]\n'
    (first, last) = faults(text)
    assert first[:2] == (
        "loops-do-not-add-up",
        "the ring of band.1 comes to 3 too few for 16 loops: rim 5 + join band.2 3 + rim 5 = 13",
    )
    assert 'name = "band.1" ring = ["rim 13", "join band.2"]' in first[2]
    assert 'name = "band.3" ring = ["rim 13", "join band.2"]' in last[2]
    for number in (1, 3):
        text += f'[[motif]]\nname = "band.{number}"\nring = ["rim 13", "join band.2"]\n'
    good(text)


def test_an_open_end_whose_sides_have_two_names_lacks_its_joint() -> None:
    text = HEAD + '[[strip]]\nname = "band"\nmotifs = 2\nsides = ["neck 5", "hem 5"]\n'
    assert faults(text) == [
        (
            "ring-faulty",
            f'two edges meet on band.{n} at the open end of strip "band"',
            f'say what it is joined to, {key} = "MOTIF", or give band.{n} '
            "a [[motif]] with a ring of its own",
        )
        for n, key in ((1, "from"), (2, "to"))
    ]


def test_loops_that_do_not_add_up_are_told_once_for_a_strip() -> None:
    assert faults(HEAD + COLLAR.replace("neck 4", "neck 1")) == [
        (
            "loops-do-not-add-up",
            "the ring of collar.1, and 6 more like it comes to 3 too few for 16 loops: "
            "neck 1 + join collar.2 3 + outside 6 + join collar.7 3 = 13",
            'if the joints are right, write sides = ["neck 4", "outside 6"] '
            'or sides = ["neck 1", "outside 9"]',
        )
    ]


def test_where_one_run_only_can_give_way_the_line_to_paste_is_given() -> None:
    ((code, message, help_),) = faults(HEAD + COLLAR.replace("6", "10"))
    assert code == "loops-do-not-add-up"
    assert "4 too many" in message
    assert help_ == (
        'if the joints are right, write sides = ["neck 0", "outside 10"] '
        'or sides = ["neck 4", "outside 6"]'
    )
    ((_, _, help_),) = faults(HEAD + COLLAR.replace("6", "12"))
    assert help_ == 'if the joints are right, write sides = ["neck 4", "outside 6"]'
    ((_, _, help_),) = faults(
        HEAD + PAIR.replace('"outside 13", "join b"', '"outside 14", "join b"')
    )
    assert help_ == 'if the joints are right, write ring = ["outside 13", "join b"]'


@pytest.mark.parametrize(
    ("old", "new", "code", "message", "help_"),
    [
        (
            '"outside 13", "join b"',
            '"outside thirteen", "join b"',
            "ring-faulty",
            '"outside thirteen" in the ring of a is neither an edge with a number nor a join',
            '"outside thirteen 0"',
        ),
        (
            '"outside 13", "join b"',
            '"outside 7", "top 6", "join b"',
            "ring-faulty",
            "in the ring of a two edges meet without a joint between them",
            'put "join MOTIF" where one edge ends and the next begins',
        ),
        (
            '"outside 13", "join b"',
            '"outside 6", "join b", "outside 4", "join b"',
            "joined-twice",
            "a and b are joined more than once",
            "leave out the others",
        ),
        (
            '"outside 13", "join b"',
            '"outside 10", "join b", "top 0", "join a"',
            "ring-faulty",
            "a is joined to itself",
            "name the other motif",
        ),
        (
            '"outside 13", "join b"',
            '"outside 10", "join b", "top 0", "join bb"',
            "no-such-motif",
            'there is no motif "bb" for a to be joined to',
            'did you mean "b"?',
        ),
        (
            '"join a", "outside 13"',
            '"outside 16"',
            "joint-one-sided",
            "a is joined to b, but the ring of b does not say so",
            'write "join a" between two edges in the ring of b',
        ),
        (
            '"join a", "outside 13"',
            '"join a by 2", "outside 14"',
            "joint-uneven",
            "the joint of a and b takes up 3 of a, but 2 of b",
            'give the joint 3 on b too: ring = ["join a", "outside 13"]',
        ),
    ],
)
def test_a_faulty_ring_or_joint(old: str, new: str, code: str, message: str, help_: str) -> None:
    assert old in PAIR
    found = faults(HEAD + PAIR.replace(old, new))
    assert [(c, m) for c, m, _ in found] == [(code, message)]
    assert help_ in found[0][2]


def test_the_answer_of_a_strip_is_given_as_from_or_to() -> None:
    text = HEAD + '[[strip]]\nname = "s"\nmotifs = 2\nsides = ["x 5", "x 5"]\n'
    text += '[[motif]]\nname = "a"\nring = ["x 13", "join s.2"]\n'
    found = faults(text)
    assert (
        "joint-one-sided",
        "a is joined to s.2, but the ring of s.2 does not say so",
        'in strip "s", write: to = "a"',
    ) in found


def test_seam_loops_must_find_room_in_a_joint() -> None:
    assert faults(HEAD + "seam_loops = 2" + PAIR) == [
        (
            "seams-too-many",
            "seam_loops = 2 at each end of a joint makes 4, but a joint takes up only 3",
            "write seam_loops = 1, or less",
        )
    ]
    one = PAIR.replace('13", "join b"', '15", "join b by 1"').replace(
        '"join a", "outside 13"', '"join a by 1", "outside 15"'
    )
    assert [m for _, m, _ in faults(HEAD + "seam_loops = 1" + one)] == [
        "the joint of a and b takes up 1, less than the 2 seam loops at its two ends",
        "the joint of b and a takes up 1, less than the 2 seam loops at its two ends",
    ]
    good(HEAD + "seam_loops = 1" + PAIR)
    two = one.replace("by 1", "by 2").replace("15", "14")
    good(HEAD + "seam_loops = 1" + two)
    good((HEAD + "seam_loops = 1" + PAIR).replace("joined = 3", "joined = 2").replace("13", "14"))


def test_a_joint_needs_a_number_from_somewhere() -> None:
    text = (HEAD + PAIR).replace("joined = 3\n", "")
    ((code, message, help_),) = faults(text)
    assert code == "bad-value"
    assert message == "[yoke] does not say how many loops of each motif a joint takes up"
    assert "joined = 3" in help_
    by = text.replace('"join b"', '"join b by 3"').replace('"join a"', '"join a by 3"')
    good(by)


def test_a_run_that_is_not_written_is_named_by_its_edge() -> None:
    text = (
        HEAD
        + COLLAR
        + """
[[motif]]
name = "collar.2"
ring = ["join collar.3", "outside 10", "join collar.1"]
"""
    )
    assert faults(text) == [
        (
            "ring-faulty",
            "in the ring of collar.2 two joints stand side by side with no edge between",
            "write the edge between them, with 0 where it has no loops: "
            'ring = ["neck 0", "join collar.3", "outside 10", "join collar.1"]',
        )
    ]
