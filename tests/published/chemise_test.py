"""Two chemise yokes of joined motifs, their motifs and their borders."""

from __future__ import annotations

import pytest
from published.restated import Counted, Made, counted, ring, short, wheels

NECK, SLEEVE = 38, 12  # wheels [book]
BOSOM, ARM = 42, 14  # rosettes [book]


def test_a_wheel_has_twelve_picots_where_its_book_says_sixteen() -> None:
    """Margaret Sims, "Designs in Crochet" V, Ladies' Home Journal, June 1895.

    24 trebles and 16 picots are the book's; one picot to every second of 24
    spaces makes 12, and the program says so.
    """
    wheel = counted("wheel", ring())
    assert wheel.made(1) == {"dc": 24}
    assert wheel.made(2) == {"dc": 24, "ch": 24}
    assert wheel.rounds[2].spaces == 24
    assert wheel.made(3) == {"sc": 48, "picot": 12}
    assert wheel.repeats(3) == [(12, {"space": 2})]
    assert wheel.not_closing() == []
    assert wheel.told() == [("count-disagrees", 3)]
    (claim,) = wheel.findings
    assert "16" in claim.message
    assert "12" in claim.message


BORDER: dict[int, tuple[int, Made, Made]] = {
    # round: repeats round the neck, what one takes, what the neck has
    2: (456, {"st": 2}, {"dc": 456, "ch": 912}),
    3: (152, {"st": 9}, {"dc": 304, "ch": 1064}),
    4: (684, {"st": 2}, {"dc": 684, "ch": 1368}),
    5: (228, {"space": 3}, {"sc": 228, "ch": 1596}),
    6: (57, {"space": 4}, {"dc": 513, "sc": 171, "ch": 912}),
    7: (57, {"dc": 9}, {"dc": 285, "picot": 228, "sc": 114, "ch": 741}),
}
SLEEVE_BORDER: dict[int, tuple[int, Made]] = {
    2: (144, {"dc": 144, "ch": 288}),
    3: (48, {"dc": 96, "ch": 336}),
    4: (216, {"dc": 216, "ch": 432}),
    5: (72, {"sc": 72, "ch": 504}),
    6: (18, {"dc": 162, "sc": 54, "ch": 288}),
    7: (18, {"dc": 90, "picot": 72, "sc": 36, "ch": 234}),
}


def test_the_border_of_a_yoke_of_wheels_closes_round_the_neck() -> None:
    """Margaret Sims, "Designs in Crochet" VI, Ladies' Home Journal, June 1895.

    38 wheels are the book's, as are 5 trebles and 4 picots on the 9 trebles of
    round 7; the counts are arithmetic: 24 to a wheel, 912 in all.
    """
    neck = counted("yoke-border", wheels("neck", NECK, 6))
    assert neck.told() == []
    assert neck.not_closing() == []
    assert neck.made(1) == {"sc": 152, "dc": 38, "ch": 722}
    assert neck.total(1) == 912
    for number, (times, takes, made) in BORDER.items():
        assert neck.repeats(number) == [(times, takes)], number
        assert neck.made(number) == made, number
    assert [neck.total(n) for n in (2, 3, 4)] == [1368, 1368, 2052]
    assert [neck.rounds[n].spaces for n in (2, 4, 5)] == [456, 684, 228]
    assert short(neck.rounds[7].repeats[0].makes) == {"dc": 5, "picot": 4, "sc": 2, "ch": 13}


def test_the_border_of_a_yoke_of_wheels_closes_round_a_sleeve() -> None:
    """Margaret Sims, "Designs in Crochet" VI, Ladies' Home Journal, June 1895.

    12 wheels are the book's; 288 stitches and the rest are arithmetic.
    """
    sleeve = counted("yoke-border", wheels("sleeve", SLEEVE, 6))
    assert sleeve.told() == []
    assert sleeve.not_closing() == []
    assert sleeve.total(1) == 288
    for number, (times, made) in SLEEVE_BORDER.items():
        assert sleeve.repeats(number) == [(times, BORDER[number][1])], number
        assert sleeve.made(number) == made, number


def test_a_wheel_has_its_share_of_the_first_round_and_the_joint_the_joined_stitch() -> None:
    """Margaret Sims, "Designs in Crochet" VI, Ladies' Home Journal, June 1895 (arithmetic)."""
    first = counted("yoke-border", wheels("neck", NECK, 6)).rounds[1]
    assert len(first.motifs) == NECK
    assert {m.motif for m in first.motifs} == {f"neck.{i}" for i in range(1, NECK + 1)}
    assert all(m.usual and short(m.made) == {"sc": 4, "ch": 19} for m in first.motifs)
    assert len(first.joints) == NECK
    assert all(short(j.made) == {"dc": 1} for j in first.joints)
    assert first.joints[-1].between == ("neck.38", "neck.1")
    assert [short(s.made) for s in first.sections] == [{"sc": 152, "dc": 38, "ch": 722}]


@pytest.mark.parametrize(
    ("section", "motifs", "times", "left"), [("neck", NECK, 45, 3), ("sleeve", SLEEVE, 14, 2)]
)
def test_the_scallop_as_printed_leaves_spaces_over(
    section: str, motifs: int, times: int, left: int
) -> None:
    """Margaret Sims, "Designs in Crochet" VI, Ladies' Home Journal, June 1895.

    The scallop as printed works into five spaces: neither 228 nor 72 divides.
    """
    printed = counted("yoke-border-as-printed", wheels(section, motifs, 6))
    assert printed.not_closing() == [6]
    assert printed.told() == [("row-does-not-close", 6)]
    assert printed.repeats(6) == [(times, {"space": 5})]
    assert printed.made(6) == {"sc": 4 * times, "dc": 9 * times, "ch": 17 * times}
    assert printed.left_over(6) == [left]
    assert f"{left} spaces are left over" in printed.message(6)


@pytest.mark.parametrize(("section", "motifs", "scallops"), [("neck", 38, 57), ("sleeve", 12, 18)])
def test_the_scallop_that_ends_on_the_first_stitch_of_the_next_meets_its_start(
    section: str, motifs: int, scallops: int
) -> None:
    """Margaret Sims, "Designs in Crochet" VI, Ladies' Home Journal, June 1895.

    The shared stitch written out: the last scallop lacks only the stitch that
    the round began with, and the counts are those of the four-space scallop.
    """
    shared = counted("yoke-border-shared", wheels(section, motifs, 6))
    mended = counted("yoke-border", wheels(section, motifs, 6))
    assert shared.told() == [("meets-its-start", 6)]
    assert shared.not_closing() == []
    assert shared.repeats(6) == [(scallops - 1, {"space": 4})]
    assert shared.left_over(6) == [0]
    assert shared.made(6) == mended.made(6)
    assert shared.made(7) == mended.made(7)


def test_a_rosette() -> None:
    """Beeton's Book of Needlework, 1870, design 286 (PG 15147). The counts are arithmetic."""
    rosette = counted("rosette", ring())
    assert rosette.told() == []
    assert rosette.not_closing() == []
    assert rosette.made(1) == {"dc": 8, "ch": 8, "picot": 8}
    assert rosette.made(2) == {"dc": 8, "ch": 48}
    assert rosette.made(3) == {"sc": 64, "picot": 24}
    assert rosette.repeats(3) == [(8, {"space": 1})]


def rosettes(section: str, motifs: int) -> Counted:
    return counted("rosette-border", wheels(section, motifs, 10))


def test_the_border_over_rosettes_closes_round_the_bosom_and_not_round_a_sleeve() -> None:
    """Beeton's Book of Needlework, 1870, design 286 (PG 15147).

    42 and 14 rosettes are the book's; 19 stitches to a rosette is arithmetic,
    and 14 x 19 leaves two over threes (the slits of the book are left out).
    """
    bosom, arm = rosettes("bosom", BOSOM), rosettes("sleeve", ARM)
    assert bosom.made(1) == {"sc": 84, "dc": 84, "ch": 630}
    assert bosom.total(1) == 798
    assert bosom.repeats(2) == [(266, {"st": 3})]
    assert bosom.made(2) == {"dc": 266, "ch": 532}
    assert bosom.told() == []
    assert arm.total(1) == 266
    assert arm.repeats(2) == [(88, {"st": 3})]
    assert arm.left_over(2) == [2]
    assert arm.told() == [("row-does-not-close", 2)]
    joint = bosom.rounds[1].joints[0]
    assert short(joint.made) == {"dc": 2, "ch": 2}
