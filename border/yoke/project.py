"""The project file: what a needleworker says of yoke, edges, thread and work.

`read_project` reads the TOML and checks its shape; what the rings and edges
come to is the business of the modules beside this one. All lengths are in mm,
`tex` in g/km, weights of balls in g and their lengths in m.
"""

from __future__ import annotations

from msgspec import Struct

from border.findings import Finding, Span
from border.text.source import Source
from border.yoke.positions import positions


class Words(Struct, frozen=True):
    """Words of the file, and where they stand."""

    text: str
    span: Span


class Yoke(Struct, frozen=True):
    """What all motifs share. `joined` is None where the file does not say it.

    `loops` round one motif; `joined`: of each motif in a joint; `seam_loops`:
    of those, at each end of a joint, free to be worked into from beside it.
    """

    loops: int
    of: str
    joined: int | None
    seam_loops: int
    motif_mm: float | None
    span: Span
    seam_span: Span


class Strip(Struct, frozen=True):
    """A section: motifs NAME.1 to NAME.N, each joined to the next.

    `sides`: two, or none where every motif has its own ring. `first` and
    `last`: the motifs that its two ends are joined to.
    """

    name: str
    motifs: int
    sides: tuple[Words, ...]
    sides_span: Span
    first: Words | None
    last: Words | None
    span: Span


class Motif(Struct, frozen=True):
    """A motif with its own ring, or that of another as in a mirror: one of the two."""

    name: str
    ring: tuple[Words, ...] | None
    mirror_of: Words | None
    span: Span


class Label(Struct, frozen=True):
    """One more name for some motifs."""

    name: str
    motifs: tuple[Words, ...]
    span: Span


class WrittenRun(Struct, frozen=True):
    """`motifs` neighbours of one section, with `places` places each."""

    section: str
    motifs: int
    places: int
    span: Span


class WrittenEdge(Struct, frozen=True):
    """An edge written straight down: runs, or (`places`) plain places; how long, if it is said,
    and how many square corners it has."""

    name: str
    closed: bool
    of: str | None
    runs: tuple[WrittenRun, ...]
    places: int | None
    span: Span
    length_mm: float | None
    corners: int


class Adjust(Struct, frozen=True):
    """In round `round`, at a section, motif or joint (`A | B`): `by` more, or fewer."""

    round: int
    at: str
    by: int
    span: Span


class Found(Struct, frozen=True):
    """What a round already worked came out at: (what, how many)."""

    round: int
    counts: tuple[tuple[str, int], ...]
    span: Span


class Measured(Struct, frozen=True):
    """What a round measured when it was laid flat: so many of it (`space`, `stitch`), in mm."""

    round: int
    of: str
    count: int
    mm: float
    span: Span


class Work(Struct, frozen=True):
    """A border to be worked into an edge. `done`: rounds already worked.

    `curve`: which way the edge curves (`in`, `out`, `straight`), where the file says so;
    `turns`: by how many degrees in all, inwards below 0.
    """

    edge: str
    border: str
    start: Words | None
    mirror: tuple[Words, ...]
    done: int
    found: Found | None
    curve: str | None
    adjustments: tuple[Adjust, ...]
    span: Span
    edge_span: Span
    border_span: Span
    done_span: Span
    measured: tuple[Measured, ...] = ()
    turns: float | None = None


class Part(Struct, frozen=True):
    """A part of an edge sewn to cloth: plain, or cloth gathered into it. In mm."""

    plain_mm: float | None
    gathered_mm: float | None
    cloth_mm: float | None


class Attachment(Struct, frozen=True):
    """An edge sewn to cloth over some sections, part by part in working order.

    `round`: which round is sewn down (0: the edge itself); None: the last. `stitch_mm`:
    from one sewing stitch to the next. `cloth_keeps`, `lace_keeps`: what a washed swatch
    keeps of its length (0.97 of 1).
    """

    edge: str
    over: tuple[Words, ...]
    parts: tuple[Part, ...]
    span: Span
    edge_span: Span
    parts_span: Span
    round: int | None = None
    round_span: Span | None = None
    stitch_mm: float | None = None
    cloth_keeps: float | None = None
    lace_keeps: float | None = None


class Sample(Struct, frozen=True):
    """A measured swatch: so many of one stitch, and the thread used up by them."""

    stitch: str
    stitches: int
    used_mm: float
    width_mm: float | None
    height_mm: float | None
    span: Span


class ProjectThread(Struct, frozen=True):
    """The thread as the project states it; None where it does not say.

    How fine it is: `size` (the number on the ball), `tex`, `den`, `nm` or `ne`.
    """

    size: str | None
    tex: float | None
    den: float | None
    nm: float | None
    ne: float | None
    hook_mm: float | None
    ball_g: float | None
    ball_m: float | None
    balls: float | None
    waste: float | None
    sample: tuple[Sample, ...]
    span: Span
    size_span: Span
    sample_span: Span


class Project(Struct, frozen=True):
    """A whole project, in the order of its file. `name` is None where it has none.

    `seen`: how visible sections and labels are, 0 to 3, where the file says so.
    `costs`: what easing in costs otherwise than usual, in points.
    """

    name: str | None
    hand: str
    yoke: Yoke | None
    strips: tuple[Strip, ...]
    motifs: tuple[Motif, ...]
    labels: tuple[Label, ...]
    edges: tuple[WrittenEdge, ...]
    works: tuple[Work, ...]
    attachments: tuple[Attachment, ...]
    thread: ProjectThread | None
    seen: dict[str, int]
    costs: dict[str, int]


def read_project(source: Source) -> tuple[Project | None, tuple[Finding, ...]]:
    """The project of a file, as far as it could be made out, and its faults of form.

    Findings: `not-toml`, `unknown-key`, `bad-value`. None where what is left
    without the faulty parts would say something else of the yoke.
    """
    # here, since a bare border text should not wait for pydantic
    from border.yoke.project_check import checked, parsed
    from border.yoke.project_made import made

    raw, findings = parsed(source)
    if raw is None:
        return None, findings
    where = positions(source)
    table, where, findings = checked(raw, where)
    return (None if table is None else made(table, where)), findings
