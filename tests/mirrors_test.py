"""Mirrored rings, and the names of a project."""

from __future__ import annotations

import pytest
from lace import pattern
from yokes import COLLAR, HEAD, faults, good, ring, told

ACROSS = """
[[strip]]
name = "front"
motifs = 5
sides = ["neck 5", "hem 5"]
[[motif]]
name = "front.1"
ring = ["neck 4", "join front.2", "hem 5", "join Left tab", "side 1"]
[[motif]]
name = "front.5"
mirror_of = "front.1"
[[motif]]
name = "Left tab"
ring = ["hem 7", "join front.1", "hem 6"]
[[motif]]
name = "Right tab"
mirror_of = "Left tab"
"""

GOOD = (
    (HEAD + ACROSS)
    .replace(', "side 1"', ', "neck 1"')
    .replace('"hem 7", "join front.1", "hem 6"', '"neck 7", "join front.1", "neck 6"')
    .replace("hem 5", "neck 5")
)


def test_a_mirror_has_the_ring_reversed_with_left_and_right_exchanged() -> None:
    _, report = good(GOOD)
    assert ring(report, "front.5") == (
        "neck 1 + join Right tab 3 + neck 5 + join front.4 3 + neck 4 = 16"
    )
    assert ring(report, "Right tab") == "neck 6 + join front.5 3 + neck 7 = 16"


def test_a_mirror_along_the_middle_keeps_its_joint() -> None:
    text = (
        HEAD
        + """
[[strip]]
name = "middle"
motifs = 3
sides = ["rim 5", "rim 5"]
[[motif]]
name = "middle.1"
ring = ["rim 3", "join left wing", "rim 2", "join right wing", "rim 2", "join middle.2"]
[[motif]]
name = "middle.3"
ring = ["rim 13", "join middle.2"]
[[motif]]
name = "left wing"
ring = ["rim 13", "join middle.1"]
[[motif]]
name = "right wing"
mirror_of = "left wing"
"""
    )
    assert ring(good(text)[1], "right wing") == "join middle.1 3 + rim 13 = 16"


@pytest.mark.parametrize(
    ("of", "code", "message"),
    [
        ("right wing", "ring-faulty", "right wing comes out as a mirror of itself"),
        ("left wng", "no-such-motif", 'there is no motif "left wng" for right wing to mirror'),
    ],
)
def test_a_mirror_of_nothing(of: str, code: str, message: str) -> None:
    text = HEAD + COLLAR + f'[[motif]]\nname = "right wing"\nmirror_of = "{of}"\n'
    assert (code, message) in [f[:2] for f in faults(text)]


def test_a_mirror_shares_the_fault_of_the_other() -> None:
    text = HEAD + ACROSS.replace("neck 4", "neck 3")
    assert [m for c, m, _ in faults(text) if c == "loops-do-not-add-up"] == [
        "the ring of front.1 comes to 1 too few for 16 loops: "
        "neck 3 + join front.2 3 + hem 5 + join Left tab 3 + side 1 = 15"
    ]


def test_a_mirror_whose_joint_both_ends_of_a_strip_answer_keeps_the_name_as_it_is() -> None:
    text = HEAD + ACROSS.replace(
        'mirror_of = "front.1"', """ring = ["neck 13", "join Right tab"]"""
    )
    text = text.replace('"side 1"]', '"side 1", "join Right tab", "side 1"]')
    assert "join front.1 3" in ring(told(text)[1], "Right tab")


def test_an_uneven_joint_and_its_mirror_are_one_fault() -> None:
    text = GOOD.replace("join Left tab", "join Left tab by 2").replace("neck 4", "neck 5")
    assert [m for c, m, _ in faults(text) if c == "joint-uneven"] == [
        "the joint of front.1 and Left tab takes up 2 of front.1, but 3 of Left tab"
    ]


# --- names --------------------------------------------------------------------


@pytest.mark.parametrize(
    ("more", "code", "message"),
    [
        (COLLAR, "name-twice", 'there is more than one of the strip "collar"'),
        (
            '[[label]]\nname = "Collar"\nmotifs = ["collar.1"]',
            "name-twice",
            'the name "Collar" is given to the label "Collar", '
            'but the strip "collar" has it already',
        ),
        (
            '[[label]]\nname = "mid"\nmotifs = ["collar.8"]',
            "no-such-motif",
            'there is no motif "collar.8" for the label "mid"',
        ),
        (
            '[[label]]\nname = "mid"\nmotifs = ["collar"]',
            "no-such-motif",
            'there is no motif "collar" for the label "mid"',
        ),
        (
            '[[motif]]\nname = "collar.8"\nring = ["x 16"]',
            "no-such-motif",
            'there is a ring for "collar.8", but the strip has no such motif',
        ),
        (
            '[[edge]]\nname = "cuff"\nruns = [{ section = "collar", places = 3 }]',
            "name-twice",
            'the name "collar" is given to the section "collar" of an edge, '
            'but the strip "collar" has it already',
        ),
        (
            '[[motif]]\nname = "collar.1"\nring = ["neck 4", "join collar.2", "outside 6", '
            '"join collar.7"]\n' * 2,
            "name-twice",
            "collar.1 has two rings",
        ),
    ],
)
def test_a_name_is_for_one_thing(more: str, code: str, message: str) -> None:
    found = faults(HEAD + COLLAR + more)
    assert [f[:2] for f in found] == [(code, message)]


def test_a_from_that_its_own_ring_does_not_have() -> None:
    text = (
        HEAD
        + COLLAR.replace("collar.7", "collar.6")
        + """
[[motif]]
name = "collar.1"
ring = ["neck 4", "join collar.2", "outside 6", "join collar.7"]
"""
    )
    ((code, message, help_),) = faults(text)
    assert code == "ring-faulty"
    assert message.startswith('strip "collar" says from = "collar.6", but collar.1 has a ring')
    assert help_ == 'leave out from, or write "join collar.6" in the ring of collar.1'


def test_motifs_without_number_are_refused_before_any_is_made() -> None:
    ((code, message, _),) = faults(HEAD + COLLAR.replace("motifs = 7", "motifs = 1000000000"))
    assert (code, message) == (
        "too-large",
        "the yoke has 1000000000 motifs; more than 10000 are not reckoned",
    )


def test_straps_of_unequal_length_have_the_mirrored_ring_written_out() -> None:
    """The demo with a wheel more in one strap: what is told to paste mends it."""
    longer = {
        'name = "right strap"\nmotifs = 3': 'name = "right strap"\nmotifs = 4',
    }
    (finding,) = pattern("fern.toml", longer).yoke_findings
    assert finding.code == "joint-one-sided"
    assert finding.help is not None
    told, _, ring = finding.help.partition(": ")
    assert told == "join back.1 to right strap.4, with a ring in place of mirror_of"
    mended = pattern("fern.toml", {**longer, 'mirror_of = "back.5"': ring})
    assert mended.yoke_findings == ()
    assert [e.places for e in mended.edges if "armhole" in e.name] == [43, 52]
