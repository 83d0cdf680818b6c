"""The tables: what a needleworker reads, at 80 columns."""

from __future__ import annotations

import pytest
from counts_by_hand import counted, does_not_close, edge, piece, round_count, tally
from msgspec.structs import replace
from rich.console import Console, RenderableType

from border.findings import Finding
from border.reckoning import sizes
from border.reckoning.counts import JointCount, RepeatCount, RoundCount
from border.reckoning.thread import USUAL, Thread
from border.showing.folding import (
    edge_in_words,
    everything,
    joint_lines,
    length,
    motif_lines,
    told_apart,
    weight,
)
from border.showing.tables import MOST, count_tables
from border.text.amounts import in_terms, kinds


def text(tables: RenderableType, width: int = 80) -> str:
    console = Console(width=width, color_system=None, markup=False, emoji=False, highlight=False)
    with console.capture() as captured:
        console.print(tables)
    return "\n".join(line.rstrip() for line in captured.get().splitlines())


def shown(*rounds: RoundCount, terms: str = "us", findings: tuple[Finding, ...] = ()) -> str:
    return text(count_tables(counted(piece(*rounds, terms=terms, findings=findings))))


def joined(table: str) -> str:
    """A table with its line ends taken out, to look for sentences in."""
    return " ".join(table.split())


def test_a_piece_of_work_has_a_heading() -> None:
    table = shown(round_count())
    assert table.startswith(
        "neck: Fern edge\n"
        "closed edge of 48 loops on 8 motifs; stitch names: US\n"
        "every round closes\n"
    )


def test_every_round_has_a_line() -> None:
    table = shown(round_count(1), round_count(2, closes=False))
    heads, first, second = (line.split() for line in table.splitlines()[4:7])
    assert heads == ["round", "stitches", "chains", "picots", "spaces", "thread"]
    numbers = ["8", "sc,", "144", "dc", "120", "4", "40", "4.3", "m"]
    assert first == ["1", *numbers]
    assert second == ["2", *numbers, "does", "not", "close"]


def test_a_round_in_full() -> None:
    table = shown(round_count())
    assert (
        "round 1\n"
        "  made      8 sc, 144 dc, 120 ch, 4 picots\n"
        "  repeats   24 times, each takes 2 loops and makes 6 dc, 5 ch; none left over\n"
        "  sections  front: 90 dc, 75 ch\n"
        "            left strap: 54 dc, 45 ch\n"
        "  motifs    front, 5 motifs: 18 dc, 15 ch each\n"
        "            left strap, 3 motifs: 15 dc, 12 ch each  (not the usual)\n"
        "  joints    front.5 | left strap.1: 1 sc\n"
        "  adjusted  left strap: 1 loop worked twice, after repeat 7\n"
    ) in table


def test_stitches_are_named_in_the_terms_of_the_border() -> None:
    table = shown(round_count(), terms="uk")
    assert "stitch names: UK" in table
    assert "8 dc, 144 tr, 120 ch, 4 picots" in table
    assert "sc" not in table


def test_kinds_of_site_are_named_in_those_terms_too() -> None:
    assert in_terms("3-dc group", "uk") == "3-tr group"
    assert in_terms("sc", "uk") == "dc"
    assert in_terms("ch-5 space", "uk") == "ch-5 space"
    assert kinds({"3-dc group": 2, "space": 1}, "us") == "2 3-dc groups, 1 space"
    assert kinds({"st": 3}, "us") == "3 st"
    assert kinds({"dc": 3}, "us") == "3 dc"
    assert kinds({"hdc": 3, "2-dc block": 2}, "uk") == "3 htr, 2 2-tr blocks"
    assert kinds({"stitch": 3}, "us") == "3 stitches"
    assert kinds({"group of 3": 2}, "us") == "2 groups of 3"


def test_a_round_that_does_not_close_says_where_and_what_to_do() -> None:
    failing = round_count(closes=False)
    table = shown(failing, findings=(does_not_close(1), does_not_close(2)))
    assert "round 1 does not close\n" in table
    assert "round 1: does not close\n" in table
    assert "; 1 left over" in table
    assert (
        "  faults    round 1 does not close: 1 loop is left over on front.2\n"
        "            skip 1 loop, or work 1 loop twice\n"
    ) in table
    assert "round 2 does not close" not in table


def test_several_rounds_that_do_not_close_are_listed_at_the_head() -> None:
    rounds = [round_count(n, closes=n == 2) for n in (1, 2, 3, 4)]
    assert "\nrounds 1, 3 and 4 do not close\n" in shown(*rounds)


def test_rounds_worked_already_are_said_to_be_and_are_no_fault() -> None:
    worked = replace(round_count(1, closes=False), done=True, found=(("dc", 140), ("spaces", 1)))
    table = shown(worked, round_count(2), terms="uk")
    assert "\nevery round still to be worked closes\n" in table
    assert "round 1 does not close" not in table
    assert "round 1, worked already: does not close\n" in table
    assert "  found     140 tr and 1 space; counted on from there\n" in table
    assert "round 2\n" in table


def test_where_the_text_could_not_be_made_out_the_table_says_so() -> None:
    part = replace(piece(round_count(1)), faulty=2, whole=False)
    table = text(count_tables(counted(part)))
    assert "nothing is counted after round 1: mend the text first" in table
    assert "every round closes" not in table
    none = text(count_tables(counted(replace(piece(), faulty=1, whole=False))))
    assert "no round could be counted" in none
    assert "thread" not in none


def test_a_motif_that_differs_among_its_neighbours_is_shown_apart() -> None:
    odd = tally(dc=17, chains=15)
    lines = motif_lines(round_count(third=odd).motifs, "us")
    assert lines == [
        ("front.1 to front.2, 2 motifs: 18 dc, 15 ch each", True),
        ("front.3: 17 dc, 15 ch", False),
        ("front.4 to front.5, 2 motifs: 18 dc, 15 ch each", True),
        ("left strap, 3 motifs: 15 dc, 12 ch each", False),
    ]


def test_motifs_that_are_all_alike_take_one_line() -> None:
    front = round_count().motifs[:5]
    assert motif_lines(front, "us") == [("every motif: 18 dc, 15 ch", True)]
    assert motif_lines(front[:1], "us") == [("front.1: 18 dc, 15 ch", True)]


def test_stitches_met_in_another_order_are_no_difference() -> None:
    front = round_count().motifs[:2]
    one = replace(front[0], made=tally(dc=1, sc=2))
    two = replace(front[1], made=tally(sc=2, dc=1))
    assert len(motif_lines([one, two], "us")) == 1


def test_joints_that_are_alike_take_one_line() -> None:
    def at(i: int, sc: int) -> JointCount:
        return JointCount((f"a.{i}", f"a.{i + 1}"), tally(sc=sc))

    assert joint_lines([at(i, 1) for i in range(5)] + [at(9, 2)], "us") == [
        "a.0 | a.1, a.1 | a.2, a.2 | a.3, a.3 | a.4, a.4 | a.5: 1 sc each",
        "a.9 | a.10: 2 sc",
    ]
    assert joint_lines([at(i, 1) for i in range(5)], "us") == ["each of 5 joints: 1 sc"]
    many = joint_lines([at(i, 1) for i in range(20)] + [at(30, 2)], "us")
    assert many[0].endswith("a.7 | a.8 and 12 more: 1 sc each")


def test_a_round_of_thousands_of_unlike_motifs_is_cut_short() -> None:
    first = round_count().motifs[0]
    many = tuple(replace(first, motif=f"front.{i}", made=tally(dc=i)) for i in range(1, MOST + 12))
    table = shown(replace(round_count(), motifs=many))
    assert "... and 11 more, all of them with --json" in table
    assert f"front.{MOST}:" in table
    assert f"front.{MOST + 1}:" not in table


def test_what_is_nothing_is_a_dash_or_a_word() -> None:
    bare = replace(round_count(), made=tally(dc=6), spaces=0, repeats=(), joints=())
    line = shown(bare).splitlines()[5]
    assert line.split()[:6] == ["1", "6", "dc", "-", "-", "-"]
    assert everything(tally(), "us") == "nothing"
    once = replace(bare, repeats=(RepeatCount(1, {}, tally(dc=1, picots=1), 0),))
    assert "once, each takes nothing and makes 1 dc, 1 picot" in shown(once)


@pytest.mark.parametrize(
    ("mm", "told"),
    [
        (0, "0 m"),
        (4.2, "0.42 cm"),
        (243, "24 cm"),
        (996, "1.0 m"),
        (2449, "2.4 m"),
        (9960, "10 m"),
        (38_400, "38 m"),
        (238_400, "240 m"),
        (12_345_678, "12000 m"),
    ],
)
def test_lengths_have_two_digits(mm: float, told: str) -> None:
    assert length(mm) == told


@pytest.mark.parametrize(
    ("band", "told"),
    [
        ((11_840, 11_600, 12_080), ("11.8 m", "11.6 m", "12.1 m")),
        ((912, 909, 913), ("91.2 cm", "90.9 cm", "91.3 cm")),
        ((1299, 1274, 1326), ("1.30 m", "1.27 m", "1.33 m")),
        ((9990, 9980, 9999), ("9.99 m", "9.98 m", "10.0 m")),
        ((2449, 2300, 2600), ("2.4 m", "2.3 m", "2.6 m")),
        ((5000, 5000, 5000), ("5.0 m", "5.0 m", "5.0 m")),
    ],
)
def test_a_band_is_never_told_as_none(
    band: tuple[float, float, float], told: tuple[str, str, str]
) -> None:
    """Three digits where both ends of it come to the same in two."""
    assert told_apart(length, *band) == told
    assert told_apart(weight, 1.25, 1.24, 1.249) == ("1.25 g", "1.24 g", "1.25 g")


def test_the_thread_says_its_band_and_what_is_in_it() -> None:
    table = joined(shown(round_count()))
    assert (
        "about 4.3 m, between 2.6 m and 6.0 m, 0.39 g, for No. 40 cotton and a 1 mm hook "
        "(no thread or hook is stated) good to 40 % either way, from hook and thread; "
        "in these rounds alone: no motifs, tails or swatch"
    ) in table
    assert "ball" not in table
    stated = Thread(sizes.stated(102), hook_mm=1.25, ball_g=20, waste=0.1)
    made = joined(text(count_tables(counted(piece(round_count()), thread=stated))))
    assert "for thread of 102 tex and a 1.25 mm hook good to 40 % either way" in made
    assert "have in hand 1 ball of 20 g: the upper figure and 10 % for waste" in made
    in_metres = replace(USUAL, ball_m=5)
    made = joined(text(count_tables(counted(piece(round_count()), thread=in_metres))))
    assert "have in hand 2 balls of 5 m" in made


def test_an_edge_in_words() -> None:
    assert edge_in_words(edge()) == "closed edge of 48 loops on 8 motifs"
    plain = replace(edge(), runs=(), closed=False, of="stitch", places=90)
    assert edge_in_words(plain) == "open edge of 90 stitches"


@pytest.mark.parametrize("width", [60, 80, 120])
def test_no_line_is_wider_than_the_page(width: int) -> None:
    long = replace(piece(round_count()), title="a very long name of a border " * 8)
    table = text(count_tables(counted(long)), width)
    assert max(map(len, table.splitlines())) <= width


def test_nothing_that_a_user_wrote_is_markup_or_an_order_to_the_terminal() -> None:
    nasty = "[red]neck[/red] :smile: \x1b[31m"
    made = replace(piece(round_count()), edge=replace(edge(), name=nasty), title=nasty)
    first = round_count().motifs[0]
    odd = replace(round_count(), motifs=(replace(first, motif=nasty),))
    for table in (text(count_tables(counted(made))), shown(odd)):
        assert "[red]neck[/red] :smile: \ufffd[31m" in table
        assert "\x1b" not in table
