"""The second implementation, by rows whose counts are worked out by hand."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from plainly import work_border
from random_borders import Adjustments, works

from border.text.source import Source
from border.text.syntax import read_border
from border.text.tree import Border
from border.yoke.edges import Edge, Run, plain_edge, runs_edge

Record = dict[str, Any]

SC = "round 1: *1 sc in next loop, ch 3; repeat from *.\n"
ONCE_ROUND = "rows without a repeat: are repeated\nchains count as stitches: yes\n"


def worked(text: str, edge: Edge, adjustments: Adjustments | None = None) -> list[Record]:
    border, findings = read_border(Source("test.border", "terms: us\n" + text))
    assert border is not None and not findings, findings
    return work_border(border, edge, adjustments)


def made(record: Record) -> dict[str, int]:
    """What a round makes: `{"dc": 24, "ch": 24}`."""
    also = {"ch": record["chains"], "picot": record["picots"]}
    stitches: dict[str, int] = record["stitches"]
    return stitches | {name: number for name, number in also.items() if number}


def last(text: str, edge: Edge, adjustments: Adjustments | None = None) -> Record:
    return worked(text, edge, adjustments)[-1]


def repeats(record: Record) -> list[tuple[int, dict[str, int], int]]:
    return [(one["times"], one["takes"], one["left_over"]) for one in record["repeats"]]


def test_diamond() -> None:
    rounds = worked(
        ONCE_ROUND
        + """
        round 1: (1 dc, ch 3) in next ch.
        round 2: 3 dc, ch 3, skip 1.
        round 3: 5 dc, ch 3, skip 1.
        round 4: 7 dc, ch 3, skip 1.
        round 5: 9 dc, ch 3, skip 1.
        round 6: skip 2, 7 dc, ch 2, skip 2, 1 dc, ch 2.
        round 7: skip 2, 5 dc, ch 3, skip 2, 3 dc, ch 3.
        round 8: skip 3, 3 dc, ch 3, skip 3, 5 dc, ch 3.
        round 9: (skip 1, 1 dc, ch 2) 3 times, skip 1, 7 dc, ch 2.
        """,
        plain_edge(8, True, "chain"),
    )
    # 8 repeats in every round: of 1 dc and 3 ch, 3 and 3, 5 and 3 …
    per_repeat = [(1, 3), (3, 3), (5, 3), (7, 3), (9, 3), (8, 4), (8, 6), (8, 6), (10, 8)]
    assert [made(r) for r in rounds] == [{"dc": 8 * dc, "ch": 8 * ch} for dc, ch in per_repeat]
    assert all(r["closes"] and not r["codes"] for r in rounds)
    assert repeats(rounds[1]) == [(8, {"st": 4}, 0)]


def test_rounds_of_a_mat() -> None:
    text = """chains count as stitches: yes
        round 1: 2 dc in each ch.
        round 2: *ch 4, skip 1 st, 1 sc in next st; repeat from *.
        round 3: *ch 4, 1 sc in next space; repeat from *.
        round 4: *ch 12, 1 sc in next space; repeat from *.
        round 5: 12 tr in each space.
        round 6: *1 sc in next st, ch 2, skip 1 st; repeat from *.
        round 7: *1 tr in next st, ch 3, skip 3 st; repeat from *.
        round 8: 1 tr in each tr, with ch 4 between.
        round 9: 4 dc in each space, with ch 1 between.
        """
    expected: list[dict[str, int]] = [
        {"dc": 12},
        {"sc": 6, "ch": 24},
        {"sc": 6, "ch": 24},
        {"sc": 6, "ch": 72},
        {"tr": 72},
        {"sc": 36, "ch": 72},
        {"tr": 27, "ch": 81},
        {"tr": 27, "ch": 108},
        {"dc": 108, "ch": 27},
    ]
    rounds = worked(text, plain_edge(6, True, "chain"))
    assert [made(r) for r in rounds] == expected
    assert [r["spaces"] for r in rounds] == [0, 6, 6, 6, 0, 36, 27, 27, 27]
    assert all(r["closes"] for r in rounds)


@pytest.mark.parametrize(("chains", "left"), [(44, 0), (45, 1), (50, 6), (51, 0)])
def test_a_foundation_of_7n_plus_2(chains: int, left: int) -> None:
    row = last(
        "bare stitches: one in each\nrow 1: 2 sc, *ch 5, skip 5, 2 sc; repeat from *.",
        plain_edge(chains, False, "chain"),
    )
    times = (chains - 2) // 7
    assert repeats(row) == [(times, {"chain": 7}, left)]
    assert made(row) == {"sc": 2 + 2 * times, "ch": 5 * times}
    assert row["codes"] == ([] if left == 0 else ["row-does-not-close"])


def test_a_round_meets_its_start() -> None:
    two = "round 2: 1 sc in first space, ch 4, *3 dc in next space, ch 4, 1 sc in next space, "
    row = last(SC + two + "ch 4; repeat from *.", plain_edge(8, True))
    # 1 sc and 3 whole repeats take 7 spaces; into the 8th go 3 dc, and 4 ch lead to the first sc
    assert made(row) == {"sc": 4, "dc": 12, "ch": 32}
    assert (row["closes"], row["codes"]) == (True, ["meets-its-start"])
    assert repeats(row) == [(3, {"space": 2}, 0)]


def test_a_row_that_is_its_repeat_does_not_meet_its_start() -> None:
    row = last(SC + "round 2: 1 sc in first space, ch 4, *1 sc in next space, ch 4; repeat from *.",
               plain_edge(8, True))  # fmt: skip
    assert (made(row), row["codes"]) == ({"sc": 8, "ch": 32}, [])
    assert repeats(row) == [(8, {"space": 1}, 0)]


def test_a_space_across_the_start_comes_last_and_is_one() -> None:
    text = """
        round 1: ch 2, *1 sc in next loop, ch 4; repeat from *.
        round 2: (1 sc, ch 1, 1 sc) in each space.
        round 3: 1 dc in each group.
        """
    one, two, three = worked(text, plain_edge(6, True))
    # ch 2 stands for no stitch of its height, and joins the last ch 4 to a space of 6
    assert (made(one), one["spaces"], one["codes"]) == (
        {"sc": 6, "ch": 26},
        6,
        ["start-chain-assumed"],
    )
    assert (made(two), two["closes"]) == ({"sc": 12, "ch": 6}, True)
    # each space's two sc are parted by a chain: no group
    assert (three["codes"], made(three)) == (["no-stitches"], {})


def test_a_start_chain_uses_up_the_space_across_the_start() -> None:
    text = """
        round 1: ch 1, not counted, ch 2, *1 sc in next loop, ch 4; repeat from *.
        round 2: ch 3 as dc, 2 dc in same space, *3 dc in next space; repeat from *.
        """
    two = last(text, plain_edge(6, True))
    # 6 spaces, one of them across the start: 3 dc there and 3 in each of the other 5
    assert (made(two), two["closes"], repeats(two)) == ({"dc": 18}, True, [(5, {"space": 1}, 0)])


def test_clauses_and_the_stitch_on_the_joint() -> None:
    text = """
        round 1: over each motif: 1 sc in first loop, *ch 5, skip 1 loop, 1 sc in next loop;
            repeat from * to end; at each joint: ch 2, 1 dc, ch 2.
        """
    row = last(text, runs_edge((5, 5, 7), True))
    # motifs: 3, 3 and 4 sc; 10, 10 and 15 ch; at 3 joints a dc and 4 ch
    assert (made(row), row["closes"]) == ({"sc": 10, "dc": 3, "ch": 47}, True)
    assert repeats(row) == [(7, {"loop": 2}, 0)]
    # chains of one run stand half-way between its stitches: here well inside the motifs
    assert [m["stitches"] for m in row["motifs"]] == [{"sc": 3}, {"sc": 3}, {"sc": 4}]
    assert [m["chains"] for m in row["motifs"]] == [14, 14, 19]
    assert [m["usual"] for m in row["motifs"]] == [True, True, False]
    assert [(j["between"], j["stitches"]) for j in row["joints"]] == [
        (["edge.1", "edge.2"], {"dc": 1}),
        (["edge.2", "edge.3"], {"dc": 1}),
        (["edge.3", "edge.1"], {"dc": 1}),
    ]


def test_a_motif_that_is_too_short() -> None:
    text = "round 1: over each motif: 1 sc in each of first 2 loops, ch 3, "
    row = last(text + "1 sc in each of last 2 loops.", runs_edge((4, 3), True))
    assert (row["codes"], row["closes"]) == (["row-does-not-close", "run-too-short"], False)
    assert made(row) == {"sc": 6, "ch": 6}


def test_labels_and_elsewhere() -> None:
    names = [("front.1", "front"), ("strap.1", "strap"), ("strap.2", "strap"), ("back.1", "back")]
    runs = tuple(Run(m, s, 4, 4, frozenset({m, s})) for m, s in names)
    edge = Edge("neck", True, "loop", runs, 16, frozenset({"front", "strap", "back", "sleeve"}))
    row = last("round 1: over strap: 1 sc in each loop; over sleeve: 1 tr in each loop; "
               "elsewhere: *2 dc in next loop, skip 2 loops; repeat from *.", edge)  # fmt: skip
    # strap is one stretch of 8 loops; back and front, across the start, are one of 8:
    # 2 dc in its loops 1 and 4, both in back, and 2 loops left
    assert made(row) == {"sc": 8, "dc": 4}
    assert repeats(row) == [(8, {"loop": 1}, 0), (0, {}, 0), (2, {"loop": 3}, 2)]
    assert row["codes"] == ["row-does-not-close"]
    assert [s["stitches"] for s in row["sections"]] == [{}, {"sc": 8}, {"dc": 4}]


def test_to_last_comes_out_at_exactly_n() -> None:
    text = "round 1: *1 sc in next loop, ch 3, skip 1 loop; repeat from * to last 2 loops, "
    text += "1 dc in each of last 2 loops."
    even, odd = (last(text, plain_edge(n, False)) for n in (10, 11))
    assert (made(even), repeats(even)) == ({"sc": 4, "ch": 12, "dc": 2}, [(4, {"loop": 2}, 0)])
    assert even["closes"]
    # of 11, a fifth repeat would go into the last two: one loop is left over before them
    assert (repeats(odd), odd["closes"]) == ([(4, {"loop": 2}, 1)], False)


def test_an_open_edge_is_turned() -> None:
    text = """
        row 1: *1 sc in next loop, ch 3; repeat from *, 1 tr in same loop.
        row 2: 5 dc in next tr, 1 sc in each space.
        """
    row = last(text, runs_edge((2, 3), False))
    # turned, the tr comes first: the group of 5 stands over the last loop, in the second motif
    assert (made(row), row["closes"]) == ({"dc": 5, "sc": 5}, True)
    assert [m["stitches"].get("dc", 0) for m in row["motifs"]] == [0, 5]


def test_an_adjustment_passes_one_more() -> None:
    text = "round 1: *1 sc in next loop, ch 3, 1 sc in next loop; repeat from *."
    plain = last(text, runs_edge((4, 4, 5), True))
    assert (repeats(plain), plain["closes"]) == ([(6, {"loop": 2}, 1)], False)
    row = last(text, runs_edge((4, 4, 5), True), [(1, "edge.2", 1)])
    # boundaries stand over loops 2, 4, 6 …: the middle of edge.2 is 6, nearest is the one at 6.5
    assert row["adjustments"] == [{"at": "edge.2", "by": 1, "before_repeat": 3}]
    assert (repeats(row), row["closes"]) == ([(6, {"loop": 2}, 0)], True)
    back = last(text, runs_edge((4, 4, 5), True), [(1, "edge.1 | edge.2", -1)])
    assert (back["stitches"], back["closes"]) == ({"sc": 14}, True)
    assert back["adjustments"] == [{"at": "edge.1 | edge.2", "by": -1, "before_repeat": 2}]


def test_as_they_come() -> None:
    text = SC + "round 2: (1 dc in each sc, 2 tr in each space) as they come, with ch 1 between."
    row = last(text, plain_edge(4, True))
    # 4 sc and 4 spaces, one behind the other; ch 1 behind each of the 8
    assert made(row) == {"dc": 4, "tr": 8, "ch": 8}
    assert ([one["times"] for one in row["repeats"]], row["closes"]) == ([8], True)
    assert made(last(text, plain_edge(4, False))) == {"dc": 4, "tr": 8, "ch": 7}
    tie = SC + "round 2: ({} in each {}, {} in each {}) as they come."
    # a space begins with its first ch: the part named first goes there, and passes the others
    spaces = last(tie.format("1 tr", "space", "1 hdc", "ch"), plain_edge(4, True))
    chains = last(tie.format("1 hdc", "ch", "1 tr", "space"), plain_edge(4, True))
    assert (made(spaces), made(chains)) == ({"tr": 4}, {"hdc": 12})
    ends = last(SC + "round 2: (1 dc in each sc, 2 tr in each space) as they come.",
                runs_edge((2, 2), True), [(2, "edge.1", 1)])  # fmt: skip
    # 8 sites; the middle of edge.1 is at 1, where a space lies: that is passed over
    assert (made(ends), ends["closes"]) == ({"dc": 4, "tr": 6}, True)


def test_questions() -> None:
    bare = "bare stitches: one in each\n" + SC + "round 2: *2 dc, skip 2; repeat from *."
    assert "chains-unclear" in last(bare, plain_edge(8, True))["codes"]
    once = "round 1: 1 sc in next loop, ch 3, skip 1 loop."
    assert last(once, plain_edge(8, True))["codes"] == ["repeat-unclear"]
    assert last(once, plain_edge(7, True))["codes"] == ["row-does-not-close"]
    inside = SC.replace("ch 3", "4 dc in same loop")
    inside += "round 2: *skip 1 st, 1 sc in next group; repeat from *."
    assert "place-unclear" in last(inside, plain_edge(4, False))["codes"]


@settings(max_examples=40, deadline=None, suppress_health_check=list(HealthCheck))
@given(works())
def test_the_parts_of_a_round_come_to_the_whole(work: tuple[Edge, Border, Adjustments]) -> None:
    edge, border, adjustments = work
    for record in work_border(border, edge, adjustments):
        if not record["stitches"]:
            return  # chains alone stand nowhere
        for name in record["stitches"] if edge.runs else ():
            parts = record["motifs"] + record["joints"]
            assert sum(p["stitches"].get(name, 0) for p in parts) == record["stitches"][name]
