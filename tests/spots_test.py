"""Spots: how much each is seen, which are unlike the rest, neighbours, and mirror images."""

from __future__ import annotations

import pytest
from worked import sections

from border.planning.spots import Spot, Spots, spots_of
from border.yoke.edges import Edge, plain_edge

NECK = sections("front 4 7 7 7 4", "right strap 5 5 5", "back 4 7 7 7 4", "left strap 5 5 5")


def at(spots: Spots, name: str) -> Spot:
    return next(spot for spot in spots.spots if spot.at == name)


def seen(spots: Spots) -> dict[str, int]:
    return {spot.at: spot.seen for spot in spots.spots}


def images(spots: Spots) -> dict[str, str]:
    """Each spot with its image, by name, where that is a spot as well."""
    names = {spot.order: spot.at for spot in spots.spots}
    return {s.at: names[image] for s in spots.spots if (image := spots.image(s.order)) in names}


# --- what spots there are -------------------------------------------------------------


def test_motifs_and_joints_come_in_the_order_of_the_edge() -> None:
    closed = spots_of(sections("a 3 3", "b 4 4"), [], {})
    assert [s.at for s in closed.spots] == [
        *("b.2 | a.1", "a.1", "a.1 | a.2", "a.2", "a.2 | b.1", "b.1", "b.1 | b.2", "b.2"),
    ]
    assert [s.order for s in closed.spots] == list(range(8))
    opened = spots_of(sections("a 3 3", "b 4 4", closed=False), [], {})
    assert [s.at for s in opened.spots] == [s.at for s in closed.spots][1:]


def test_what_is_met_twice_cannot_be_named_and_is_no_spot() -> None:
    a, b, c = sections("a 3", "b 3", "c 3").runs
    twice = Edge("edge", True, "loop", (a, b, a, c), 12)
    assert [s.at for s in spots_of(twice, [], {}).spots] == ["b.1", "c.1"]


@pytest.mark.parametrize(
    ("edge", "names"),
    [
        (sections("a 5"), ["a.1"]),
        (sections("a 5", closed=False), ["a.1"]),
        (sections("a 5 5"), ["a.1", "a.2"]),  # "a.1 | a.2" would be either of two joints
        (sections("a 5 5", closed=False), ["a.1", "a.1 | a.2", "a.2"]),
    ],
)
def test_on_one_or_two_motifs_each_is_the_neighbour_of_each(edge: Edge, names: list[str]) -> None:
    spots = spots_of(edge, [], {})
    assert [s.at for s in spots.spots] == names
    assert spots.mirror is None
    assert all(spots.neighbours(a.order, b.order) for a in spots.spots for b in spots.spots)


# --- how much they are seen -------------------------------------------------------------


def test_motifs_are_seen_as_their_names_say() -> None:
    hem = sections("front 5 5", "left underarm 5", "back 5 5", "side 5", "strap 5", "shoulder 5")
    found = seen(spots_of(hem, [], {}))
    motifs = {name: n for name, n in found.items() if "|" not in name}
    assert motifs == {
        "front.1": 2,
        "front.2": 2,
        "left underarm.1": 0,
        "back.1": 1,
        "back.2": 1,
        "side.1": 1,
        "strap.1": 1,
        "shoulder.1": 1,
    }


def test_a_joint_is_seen_no_more_than_the_less_seen_of_its_motifs() -> None:
    found = seen(spots_of(sections("front 5 5", "left underarm 5", "back 5"), [], {}))
    assert found["front.1 | front.2"] == 2
    assert found["front.2 | left underarm.1"] == 0
    assert found["back.1 | front.1"] == 1


def test_a_label_counts_as_a_name_and_an_unknown_one_is_little_seen() -> None:
    found = seen(spots_of(sections("front 5: underarm", "frontage 5", "cuff 5"), [], {}))
    assert (found["front.1"], found["frontage.1"], found["cuff.1"]) == (0, 1, 1)


def test_the_project_says_how_much_is_seen_motif_before_label_before_section() -> None:
    edge = sections("front 5: corner", "front 5 5", "back 5: corner")
    given = {"front": 1, "corner": 3, "back": 0}
    found = seen(spots_of(edge, [], given))
    assert (found["front.1"], found["front.2"], found["back.1"]) == (3, 1, 3)
    by_motif = seen(spots_of(edge, [], {**given, "front.1": 0}))
    assert (by_motif["front.1"], by_motif["front.2"]) == (0, 1)


def test_everybody_looks_at_the_middle_of_the_front() -> None:
    threes = [name for name, n in seen(spots_of(NECK, [], {})).items() if n == 3]
    assert threes == ["front.3"]
    even = sections("front 6 6 6 6", "right strap 5", "back 6 6 6 6", "left strap 5")
    threes = [name for name, n in seen(spots_of(even, [], {})).items() if n == 3]
    assert threes == ["front.2 | front.3"]


def test_without_mirror_points_it_is_the_middle_of_the_series_of_front_motifs() -> None:
    uneven = sections("side 3", "front 6 6 5 6 6", "back 4 6")
    spots = spots_of(uneven, [], {})
    assert spots.mirror is None
    assert [name for name, n in seen(spots).items() if n == 3] == ["front.3"]
    # two motifs of a front have no middle worth speaking of
    assert 3 not in seen(spots_of(sections("side 3", "front 6 5", "back 4 6"), [], {})).values()


def test_a_front_that_goes_on_across_the_start_has_one_middle() -> None:
    whole = sections("front 6 6 5 6 6", "back 4 6", "side 3").runs
    for start in range(len(whole)):
        runs = whole[start:] + whole[:start]
        spots = spots_of(Edge("neck", True, "loop", runs, 42), [], {})
        assert [name for name, n in seen(spots).items() if n == 3] == ["front.3"], start


def test_an_open_edge_has_one_axis_and_one_middle() -> None:
    front = sections("front 4 5 5 5 5 5", closed=False)
    spots = spots_of(front, ["front.2"], {})
    assert [name for name, n in seen(spots).items() if n == 3] == ["front.2"]


def test_where_the_project_says_how_much_the_front_is_seen_its_middle_is_no_more() -> None:
    found = seen(spots_of(NECK, [], {"front": 1}))
    assert {found[f"front.{n}"] for n in range(1, 6)} == {1}
    mine = seen(spots_of(NECK, [], {"front.3": 0}))
    assert (mine["front.3"], mine["front.2"], mine["front.2 | front.3"]) == (0, 2, 0)


# --- which are unlike the rest ------------------------------------------------------------


def test_irregular_are_motifs_unlike_most_and_joints_of_unlike_motifs() -> None:
    spots = spots_of(sections("front 7 7 4", "back 7 7 7"), [], {})
    assert [s.at for s in spots.spots if s.irregular] == [
        *("back.3 | front.1", "front.2 | front.3", "front.3", "front.3 | back.1"),
    ]


# --- mirror images --------------------------------------------------------------------------


def test_a_symmetrical_yoke_finds_its_mirror_by_itself() -> None:
    spots = spots_of(NECK, [], {})
    pairs = images(spots)
    assert pairs["front.3"] == "front.3"
    assert pairs["back.3"] == "back.3"
    assert pairs["front.1"] == "front.5"
    assert pairs["left strap.3"] == "right strap.1"
    assert pairs["front.2 | front.3"] == "front.3 | front.4"
    assert pairs["left strap.3 | front.1"] == "front.5 | right strap.1"
    assert len(pairs) == len(spots.spots)
    assert all(pairs[pairs[name]] == name for name in pairs)


def test_left_and_right_tell_which_of_two_symmetries_it_is() -> None:
    # by places alone, front and back could be exchanged as well
    square = sections("front 6 6", "right strap 4", "back 6 6", "left strap 4")
    pairs = images(spots_of(square, [], {}))
    assert pairs["left strap.1"] == "right strap.1"
    assert pairs["front.1"] == "front.2"


def test_places_alone_tell_it_where_names_do_not() -> None:
    pairs = images(spots_of(sections("a 6", "b 4", "c 5", "d 4"), [], {}))
    assert pairs["b.1"] == "d.1"
    assert pairs["a.1"] == "a.1"
    opened = images(spots_of(sections("a 6", "b 4", "c 6", closed=False), [], {}))
    assert opened == {
        "a.1": "c.1",
        "b.1": "b.1",
        "c.1": "a.1",
        "a.1 | b.1": "b.1 | c.1",
        "b.1 | c.1": "a.1 | b.1",
    }


@pytest.mark.parametrize(
    "edge",
    [
        sections("cuff 6 6 6 6 6"),  # symmetrical about every motif
        sections("a 6", "b 4", "c 5", "d 3"),  # about none
        sections("a 6", "b 4", "c 5", closed=False),
    ],
)
def test_where_there_is_not_just_one_symmetry_there_is_no_mirror(edge: Edge) -> None:
    assert spots_of(edge, [], {}).mirror is None


@pytest.mark.parametrize(
    "mirror", ["cuff.2", "cuff.4 | cuff.5", "cuff.5 | cuff.4", " cuff.5|cuff.4 "]
)
def test_the_mirror_that_the_project_gives(mirror: str) -> None:
    pairs = images(spots_of(sections("cuff 6 6 6 6 6"), [mirror], {}))
    assert pairs["cuff.2"] == "cuff.2"
    assert pairs["cuff.1"] == "cuff.3"
    assert pairs["cuff.4"] == "cuff.5"
    assert pairs["cuff.4 | cuff.5"] == "cuff.4 | cuff.5"
    assert pairs["cuff.5 | cuff.1"] == "cuff.3 | cuff.4"


def test_a_mirror_point_that_the_edge_does_not_have_is_passed_over() -> None:
    # a project gives its mirror points once for all, and an edge has some of them
    spots = spots_of(sections("cuff 6 6 6 6 6"), ["front.3", "cuff.1"], {})
    assert images(spots)["cuff.2"] == "cuff.5"
    assert spots_of(sections("cuff 6 6 6 6 6"), ["front.3"], {}).mirror is None


def test_images_on_an_open_edge_may_lie_beyond_its_end() -> None:
    pairs = images(spots_of(sections("cuff 6 6 6 6", closed=False), ["cuff.2"], {}))
    assert pairs["cuff.1"] == "cuff.3"
    assert "cuff.4" not in pairs


# --- neighbours -----------------------------------------------------------------------------


def test_neighbours_are_in_one_motif_or_in_the_next() -> None:
    spots = spots_of(NECK, [], {})

    def neighbours(a: str, b: str) -> bool:
        return spots.neighbours(at(spots, a).order, at(spots, b).order)

    assert neighbours("front.2", "front.3")
    assert neighbours("front.2", "front.2 | front.3")
    assert neighbours("front.1 | front.2", "front.2 | front.3")
    assert not neighbours("front.1 | front.2", "front.3")
    assert not neighbours("front.1", "front.3")
    assert neighbours("left strap.3", "front.1")  # across the start
    assert neighbours("front.1", "left strap.2 | left strap.3") is False
    opened = spots_of(sections("cuff 6 6 6 6", closed=False), [], {})
    assert not opened.neighbours(at(opened, "cuff.1").order, at(opened, "cuff.4").order)


# --- edges of plain places ----------------------------------------------------------------------


def test_a_plain_edge_has_spots_evenly_spread() -> None:
    spots = spots_of(plain_edge(240, True), [], {})
    assert [s.at for s in spots.spots] == [f"place {n}" for n in range(1, 241, 10)]
    assert [(s.seen, s.irregular) for s in spots.spots] == [(0, True), *23 * [(1, False)]]
    assert spots.mirror is None
    few = spots_of(plain_edge(5, True), [], {})
    assert [s.at for s in few.spots] == [f"place {n}" for n in range(1, 6)]


@pytest.mark.parametrize("places", [1, 2, 5, 24, 25, 241])
def test_a_plain_open_edge_has_both_its_ends_and_each_spot_its_image(places: int) -> None:
    spots = spots_of(plain_edge(places, False), [], {})
    numbers = [int(s.at.removeprefix("place ")) for s in spots.spots]
    assert numbers == sorted({places + 1 - n for n in numbers})
    assert (numbers[0], numbers[-1]) == (1, places)
    assert len(numbers) == min(places, 24)
    assert [s.seen for s in spots.spots] == [int(n not in (1, places)) for n in numbers]
    pairs = images(spots)
    assert pairs == {f"place {n}": f"place {places + 1 - n}" for n in numbers}
