"""A lozenge and two stars out of Dillmont's Encyclopedia of Needlework."""

from __future__ import annotations

from published.restated import closed_chain, counted, ring


def test_a_guipure_lozenge_takes_up_every_stitch() -> None:
    """Th. de Dillmont, Encyclopedia of Needlework, 1890 (PG 20776), fig. 470. Arithmetic."""
    lozenge = counted("lozenge", ring())
    assert lozenge.told() == []
    assert lozenge.not_closing() == []
    assert lozenge.made(1) == {"dc": 4, "ch": 18, "picot": 2}
    assert lozenge.made(2) == {"dc": 8, "ch": 44}
    assert lozenge.repeats(2) == [(2, {"dc": 2})]
    assert [lozenge.made(n) for n in (3, 4, 5)] == [{"sc": 64}, {"dc": 76}, {"sc": 84}]


def test_the_last_twelve_stitches_of_the_lozenge_are_not_printed() -> None:
    """Th. de Dillmont, Encyclopedia of Needlework, 1890 (PG 20776), fig. 470."""
    printed = counted("lozenge-as-printed", ring())
    assert printed.made(5) == {"sc": 72}
    assert printed.not_closing() == [5]
    assert printed.told() == [("row-does-not-close", 5)]
    assert "12 st are left over" in printed.message(5)


def test_a_star_has_the_trebles_that_its_book_says() -> None:
    """Th. de Dillmont, Encyclopedia of Needlework, 1890 (PG 20776), fig. 482.

    80 trebles, 32 quadruple trebles and, round its 16 points, 15 repeats and 256
    trebles are the book's: claims in the text, which nothing disagrees with.
    """
    star = counted("star", ring())
    assert star.told() == []
    assert star.not_closing() == []
    assert star.made(1) == {"tr": 8, "ch": 32}
    assert star.rounds[1].spaces == 8
    assert star.made(2) == {"sc": 32, "picot": 7}
    assert star.made(3) == {"dc": 8, "ch": 72}
    assert star.made(4) == {"dc": 80}
    assert star.repeats(5) == [(16, {"st": 5})]
    assert star.made(5) == {"trtr": 32, "ch": 128}
    assert star.made(6) == {"sc": 160}


def test_round_the_points_of_the_star_the_last_repeat_meets_the_start() -> None:
    """Th. de Dillmont, Encyclopedia of Needlework, 1890 (PG 20776), fig. 482."""
    points = counted("star-points", closed_chain(16))
    assert points.told() == [("meets-its-start", 1)]
    assert points.repeats(1) == [(15, {"chain": 1})]
    assert points.made(1) == {"sc": 16, "ch": 240}
    assert points.made(2) == {"dc": 256}
    assert points.not_closing() == []


def test_the_points_of_the_star_take_nine_stitches_as_printed_and_want_ten() -> None:
    """Th. de Dillmont, Encyclopedia of Needlework, 1890 (PG 20776), fig. 482.

    16 points are the book's, and 9 stitches to a point (16 x 9 = 144 of 160) its
    slip: with 10, one more missed before each, they are 16, and the round closes.
    """
    printed = counted("star-as-printed", ring())
    assert printed.made(6) == {"sc": 160}
    assert printed.repeats(7) == [(17, {"st": 9})]
    assert printed.left_over(7) == [7]
    assert printed.told() == [("row-does-not-close", 7)]
    assert "7 st are left over" in printed.message(7)
    mended = counted("star-mended", ring())
    assert mended.told() == []
    assert mended.repeats(7) == [(16, {"st": 10})]
    assert mended.made(7) == {"sc": 80}


def test_a_star_with_squares_repeats_more_in_one_round_and_in_all_in_the_next() -> None:
    """Th. de Dillmont, Encyclopedia of Needlework, 1890 (PG 20776), fig. 483.

    8 trebles in round 1 are the book's. "23 times" as 23 more wants 25 stitches
    of 24.
    """
    star = counted("squares-star", ring())
    assert star.told() == []
    assert star.not_closing() == []
    assert star.made(1) == {"dc": 8, "ch": 16}
    assert star.made(2) == {"dtr": 24, "ch": 48}
    assert star.made(3) == {"tr": 24, "ch": 72}
    assert star.rounds[3].spaces == 24
    more = counted("squares-star-more", ring())
    assert more.not_closing() == [2]
    assert more.told() == [("row-does-not-close", 2)]
    assert more.made(2) == star.made(2)
