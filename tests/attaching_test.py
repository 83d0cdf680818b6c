"""An edge sewn to cloth: shares, gathers, pins, sewing stitches, and what does not fit."""

from __future__ import annotations

import io
import json

import jsonschema
import pytest
from hypothesis import given
from hypothesis import strategies as st
from lace import on, pattern, project
from rich.console import Console
from worked import motifs, plain

from border.pipeline import Pipeline
from border.reckoning.attaching import FULL, SCANTY, Sewn, sewn, shared
from border.reckoning.lace_pieces import Piece, pieces_of
from border.reckoning.stitch_sizes import Band
from border.showing.record import to_json
from border.showing.schema import schema
from border.showing.sewing_record import attach_record
from border.showing.sewing_tables import sewing_tables
from border.text.tree import NOWHERE
from border.working.fabric import edge_fabric
from border.yoke.attachments import stretch_of
from border.yoke.project import Attachment, Part


def said(*parts: Part, pitch: float | None = None, **more: float) -> Attachment:
    return Attachment("hem", (), parts, NOWHERE, NOWHERE, NOWHERE, stitch_mm=pitch, **more)  # type: ignore[arg-type]


def flat(mm: float) -> Part:
    return Part(mm, None, None)


def gathers(mm: float, cloth: float) -> Part:
    return Part(None, mm, cloth)


def row(n: int) -> list[Piece]:
    return [Piece("", i + 1) for i in range(n)]


def reckoned(n: int, *parts: Part, lace: Band | None = None, **more: float) -> Sewn:
    return sewn(said(*parts, **more), "space", row(n), lace)


# --- shares --------------------------------------------------------------------------


def test_pieces_are_shared_out_by_finished_length() -> None:
    """210 mm of seam as it would be laid out by hand: 62 spaces, 60 : 90 : 60 mm.

    60/210 x 62 = 17.7 and 150/210 x 62 = 44.3, so the bounds are 18 and 44.
    """
    done = reckoned(62, flat(60), gathers(90, 140), flat(60))
    assert [(p.first, p.last) for p in done.parts] == [(1, 18), (19, 44), (45, 62)]
    assert [round(p.ratio, 2) for p in done.parts] == [1.0, 1.56, 1.0]
    assert [p.gathered for p in done.parts] == [False, True, False]
    assert done.finished_mm == 210


lengths = st.integers(1, 3000).map(lambda tenths: tenths / 10)
some_parts = st.lists(
    st.one_of(
        lengths.map(flat),
        st.tuples(lengths, lengths).map(lambda two: gathers(two[0], two[0] + two[1])),
    ),
    min_size=1,
    max_size=8,
)


def half_up(mm: float, by: float) -> int:
    """One length in another, in tenths of a mm."""
    return (round(mm * 10) * 2 + round(by * 10)) // (2 * round(by * 10))


@given(st.integers(1, 400), some_parts, st.integers(5, 60).map(lambda tenths: tenths / 10))
def test_nothing_is_lost_and_nothing_lies_far_from_where_it_would(
    n: int, parts: list[Part], pitch: float
) -> None:
    done = reckoned(n, *parts, pitch=pitch)
    assert [p.first for p in done.parts] == [1, *(p.last + 1 for p in done.parts[:-1])]
    assert done.parts[-1].last == n
    so_far = 0.0
    for part in done.parts:
        so_far += part.finished_mm
        assert abs(part.last - n * so_far / done.finished_mm) <= 0.5 + 1e-9
        assert len(part.takes) == part.pieces
        if part.pieces:
            assert sum(part.takes) == max(half_up(part.finished_mm, pitch), 1)
            assert max(part.takes) - min(part.takes) <= 1
    at = [pin.pieces for pin in done.pins]
    assert at == sorted(set(at))
    for pin in done.pins:
        assert pin.cloth_mm >= pin.lace_mm - 1e-6
        if pin.eighths is not None:
            assert abs(pin.pieces - n * pin.eighths / 8) <= 0.5


@given(st.integers(0, 500), st.integers(1, 200))
def test_what_is_left_over_is_spread_evenly(what: int, among: int) -> None:
    """As even as can be: any stretch of so many has its share, to within one."""
    takes = shared(what, among)
    assert sum(takes) == what
    for length in {1, min(3, among), among // 2 or 1, among}:
        sums = [sum(takes[i : i + length]) for i in range(among - length + 1)]
        assert max(sums) - min(sums) <= 1


def test_pins_halve_and_halve_again_and_mark_where_a_part_ends() -> None:
    done = reckoned(64, flat(40), gathers(80, 160), flat(40))
    assert [pin.eighths for pin in done.pins] == list(range(9))
    assert [pin.pieces for pin in done.pins] == [8 * i for i in range(9)]
    assert [pin.cloth_mm for pin in done.pins] == [0, 20, 40, 80, 120, 160, 200, 220, 240]
    assert [pin.lace_mm for pin in done.pins] == [20 * i for i in range(9)]
    odd = reckoned(64, flat(30), flat(130))
    assert [(p.eighths, p.pieces) for p in odd.pins[:3]] == [(0, 0), (1, 8), (None, 12)]


def test_sewing_stitches_are_as_far_apart_as_is_said() -> None:
    usual, wide = reckoned(20, flat(100)), reckoned(20, flat(100), pitch=10)
    assert usual.parts[0].takes == (2,) * 20
    assert wide.parts[0].takes == (0, 1) * 10


# --- gathers and fit --------------------------------------------------------------------


def test_gathers_are_usual_from_three_halves_to_two() -> None:
    """1.5 : 1 is 19th-century school plain work (Sewing Handicraft for Girls); 2 : 1 is usual
    now (common practice)."""
    assert (SCANTY, FULL) == (1.5, 2.0)
    ratios = {140: False, 150: True, 180: True, 200: True, 210: False}
    for cloth, usual in ratios.items():
        (part,) = reckoned(40, gathers(100, cloth)).parts
        assert part.usual is usual, cloth
    assert reckoned(40, flat(100)).parts[0].usual


def test_lace_that_is_longer_or_shorter_than_the_cloth() -> None:
    for lace, out in ((100, 0), (104, 0), (120, 20), (96, 0), (80, -20)):
        done = reckoned(40, flat(100), lace=Band(lace, lace))
        assert done.too_long == pytest.approx(out), lace
    assert reckoned(40, flat(100)).too_long == 0
    can = reckoned(40, flat(50), gathers(100, 180)).cloth_can_be
    assert (can.low, can.high) == (50 + 90, 50 + 120)


def test_cloth_is_cut_by_what_its_swatch_and_the_lace_s_lose_in_the_wash() -> None:
    """Cloth that keeps 0.95 of its length beside lace that keeps 0.98: 100 mm of lace wash to 98,
    and 103.2 mm of cloth do so too."""
    done = reckoned(40, flat(100), gathers(50, 90), cloth_keeps=0.95, lace_keeps=0.98)
    cut = [part.cut_mm for part in done.parts]
    assert cut == [pytest.approx(100 * 0.98 / 0.95), pytest.approx(90 * 0.98 / 0.95)]
    assert cut[0] is not None
    assert cut[0] * 0.95 == pytest.approx(100 * 0.98)
    assert reckoned(40, flat(100)).parts[0].cut_mm is None


# --- pieces of lace ----------------------------------------------------------------------


def test_pieces_are_told_by_motif() -> None:
    edge = motifs(4, 4, 4)
    _, worked = on("round 1: 1 sc in each loop, with ch 2 between.", edge)
    of, pieces = pieces_of(worked.rounds[0].fabric, (0, 12))
    assert (of, len(pieces)) == ("space", 12)
    assert [p.motif for p in pieces].count("edge.1") == 3
    assert Piece("edge.1 | edge.2", 1) in pieces
    assert pieces[0] == Piece("edge.3 | edge.1", 1)
    _, solid = on("round 1: 2 sc in each loop.", edge)
    of, pieces = pieces_of(solid.rounds[0].fabric, (4, 8))
    assert (of, pieces) == ("stitch", tuple(Piece("edge.2", n) for n in range(1, 9)))
    of, pieces = pieces_of(edge_fabric(edge), (8, 16))
    assert [p.motif for p in pieces] == ["edge.3"] * 4 + ["edge.1"] * 4


def test_turned_work_is_sewn_from_the_same_end() -> None:
    edge = motifs(4, 4, 4)
    text = "round 1: 1 sc in each loop, with ch 2 between{}."
    _, straight = on(text.format(""), edge)
    _, turned = on(text.format(", turn") + "\nround 2: 2 sc in each space.", edge)
    _, back = on(text.format("") + "\nround 2: 2 sc in each space.", edge)
    assert pieces_of(straight.rounds[0].fabric, (4, 8)) == pieces_of(
        turned.rounds[0].fabric, (4, 8)
    )
    one, other = (w.rounds[1].fabric for w in (turned, back))
    assert [p.motif for p in pieces_of(one, (4, 8))[1]] == [
        p.motif for p in pieces_of(other, (4, 8))[1]
    ]


def test_a_stretch_of_an_edge_by_names() -> None:
    (hem,) = (e for e in pattern("fern.toml").edges if e.name == "hem")
    assert stretch_of(hem, []) == (0, 102)
    front, back = stretch_of(hem, ["front"]), stretch_of(hem, ["back"])
    assert front is not None
    assert back is not None
    assert front[1] - front[0] == back[1] - back[0] == 35
    assert stretch_of(hem, ["front", "back"]) is None
    assert stretch_of(hem, ["underarm"]) is None
    around = stretch_of(hem, ["front", "left underarm", "back"])
    assert around is not None
    assert around[1] - around[0] == 102 - 16
    assert stretch_of(plain(30), []) == (0, 30)


# --- a project -----------------------------------------------------------------------------

CUFF = """
format = 1
[[edge]]
name = "cuff"
places = 24
length_mm = 96
[[work]]
edge = "cuff"
border = "lace.border"
curve = "straight"
[[attach]]
edge = "cuff"
parts = [{ plain_mm = 36 }, { gathered_mm = 60, cloth_mm = 100 }]
[thread]
hook_mm = 1.0
sample = [{ stitch = "dc", stitches = 40, used_mm = 690, width_mm = 52, height_mm = 2.6 }]
"""
LACE = "terms: us\nround 1: *1 dc in next loop, ch 6, skip 1 loop; repeat from *.\n"


def told(pipeline: Pipeline) -> str:
    out = io.StringIO()
    Console(file=out, width=100).print(sewing_tables(pipeline.sewing))
    return out.getvalue()


def cuff(*changes: tuple[str, str], lace: str = LACE) -> Pipeline:
    text = CUFF
    for old, new in changes:
        assert old in text
        text = text.replace(old, new)
    return project(text, lace=lace)


def test_a_cuff_is_sewn_by_its_last_round() -> None:
    pipeline = cuff()
    (edge,) = pipeline.sewing.edges
    assert pipeline.sewing.findings == ()
    assert (edge.round, edge.sewn.of, len(edge.sewn.pieces)) == (1, "space", 12)
    # 12 dc and 72 chains of 1.3 mm can lie as long as 109 mm, and so on 96 as on 62
    tight = cuff(("length_mm = 96", "length_mm = 62"))
    (finding,) = tight.sewing.findings
    assert finding.code == "lace-does-not-fit"
    assert "lies 34 mm shorter than the 96 mm that it is sewn to" in finding.message
    text = told(pipeline)
    assert "100 mm gathered into 60 mm, 1.7 : 1" in text
    assert "behind no. 6" in text


def test_lace_and_gathers_that_do_not_agree_are_told_with_what_to_do() -> None:
    loose = cuff(("length_mm = 96", "length_mm = 52"), ("plain_mm = 36", "plain_mm = 2"))
    (finding,) = loose.sewing.findings
    assert finding.help == "draw the gathers up to 50 mm in all"
    many = cuff(("cloth_mm = 100", "cloth_mm = 180"))
    assert [f.code for f in many.sewing.findings] == ["gathers-unusual"]
    assert many.sewing.findings[0].message == "3 : 1 are many gathers"


def test_the_edge_itself_can_be_sewn_and_a_round_that_is_not_there_cannot() -> None:
    (edge,) = cuff(('edge = "cuff"\nparts', 'edge = "cuff"\nround = 0\nparts')).sewing.edges
    assert (edge.round, edge.sewn.of, len(edge.sewn.pieces)) == (0, "loop", 24)
    assert edge.sewn.lace == Band(96, 96)
    wrong = cuff(('edge = "cuff"\nparts', 'edge = "cuff"\nround = 4\nparts')).sewing
    assert wrong.edges == ()
    assert [f.message for f in wrong.findings] == [
        "there is no round 4 to be sewn down on the cuff"
    ]


def test_without_a_swatch_it_is_shared_out_all_the_same() -> None:
    bare = cuff((", width_mm = 52, height_mm = 2.6", ""))
    (edge,) = bare.sewing.edges
    assert edge.sewn.lace is None
    assert "how long the lace lies there is not known" in told(bare)


def test_what_was_washed_is_told() -> None:
    washed = cuff(
        ("[thread]", "cloth_washed = { before_mm = 200, after_mm = 190 }\n[thread]"),
    )
    text = told(washed)
    assert "the cloth shrinks 5 % in the wash, by its swatch" in text
    assert "the lace is taken to keep its length in the wash" in text
    assert "before the wash cut 105 mm" in text


@pytest.mark.parametrize(
    ("change", "code", "said"),
    [
        (('edge = "cuff"\nparts', 'edge = "cuf"\nparts'), "no-such-edge", 'no edge "cuf"'),
        (
            ('edge = "cuff"\nparts', 'edge = "cuff"\nover = ["front"]\nparts'),
            "unknown-name",
            "front",
        ),
        (("cloth_mm = 100", "cloth_mm = 40"), "bad-value", "cannot be gathered into 60"),
        (("plain_mm = 36", "plain = 36"), "unknown-key", 'no key "plain"'),
        (
            ("[thread]", "lace_washed = { before_mm = 100, after_mm = 9 }\n[thread]"),
            "bad-value",
            "measures 9 mm when washed",
        ),
    ],
)
def test_what_cannot_be_sewn_so_is_told(change: tuple[str, str], code: str, said: str) -> None:
    findings = cuff(change).findings
    assert any(f.code == code and said in f.message and f.span for f in findings), findings


def test_the_record_keeps_to_its_schema() -> None:
    shape = {"$ref": "#/$defs/AttachRecord", "$defs": schema()["$defs"]}
    record = json.loads(to_json(attach_record(pattern("fern.toml").sewing)))
    jsonschema.Draft202012Validator(shape).validate(record)
    assert [e["over"] for e in record["edges"]][:2] == [["front"], ["back"]]
    assert all(e["too_long_mm"] == 0 for e in record["edges"])
    assert sum(e["pieces"] for e in record["edges"]) == 102


HEM = """
format = 1
hand = "{hand}"
[[edge]]
name = "hem"
length_mm = 420
closed = false
runs = [
    {{ section = "left side", motifs = 2, places = 6 }},
    {{ section = "middle", motifs = 3, places = 6 }},
    {{ section = "right side", motifs = 2, places = 6 }},
]
[[work]]
edge = "hem"
border = "lace.border"
{sewn}
[thread]
sample = [{{ stitch = "dc", stitches = 40, used_mm = 690, width_mm = 80, height_mm = 4 }}]
"""
SEWN = '[[attach]]\nedge = "hem"\nround = {round}\nover = {over}\nparts = {parts}\n'
SOLID = "terms: us\nround 1: 2 dc in each loop.\nround 2: 1 dc in each dc.\n"
FLAT = "[{ plain_mm = 90 }]"


def hem(*overs: str, hand: str = "right", number: int = 1, parts: str = FLAT) -> Pipeline:
    sewn = "\n".join(SEWN.format(over=over, parts=parts, round=number) for over in overs)
    return project(HEM.format(hand=hand, sewn=sewn), lace=SOLID)


@pytest.mark.parametrize("number", [0, 1, 2])
def test_the_parts_of_an_edge_without_wheels_are_as_long_as_their_share(number: int) -> None:
    """By geometry: 2/7, 3/7 and 2/7 of 420 mm; and of 84 dc of 2 mm, which end 2 mm within it."""
    pipeline = hem('["left side"]', '["middle"]', '["right side"]', number=number)
    laces = [edge.sewn.lace for edge in pipeline.sewing.edges]
    whole = (120, 180, 120) if not number else (48, 72, 48)
    assert [lace.middle for lace in laces if lace] == pytest.approx(whole, abs=2.1)
    if number:
        (lies,) = pipeline.lying.works
        assert sum(lace.middle for lace in laces if lace) == pytest.approx(
            lies.rounds[number - 1].length.as_it_lies.middle
        )


@pytest.mark.parametrize(
    ("overs", "where"),
    [
        (('["left side", "middle"]', '["middle", "right side"]'), "over middle"),
        (('["middle"]', "[]"), "over middle"),
        (('["left side"]', '["middle"]'), None),
        (('["left side"]', '["middle"]', '["left side"]'), "over left side"),
    ],
)
def test_what_is_sewn_down_twice_is_told(overs: tuple[str, ...], where: str | None) -> None:
    told = [f for f in hem(*overs).findings if f.code == "sewn-twice"]
    assert [f.message for f in told] == ([f"the hem is sewn down already {where}"] if where else [])


def test_parts_follow_the_working_and_that_is_told() -> None:
    parts = "[{ plain_mm = 60 }, { plain_mm = 90 }]"
    for hand, order in (("right", ("left side", "middle")), ("left", ("middle", "left side"))):
        sewing = hem('["left side", "middle"]', hand=hand, parts=parts).sewing
        (edge,) = sewing.edges
        assert edge.over == order
        behind = edge.sewn.pins[1].behind
        assert behind is not None
        assert behind.motif.startswith(order[0])
        notes = [f.message for f in sewing.findings if f.code == "sewn-as-worked"]
        told = ["the hem is worked over middle, then left side: part 1 begins over middle"]
        assert notes == (told if hand == "left" else [])
