"""From the tables of a project file to the project, with a span for every part."""

from __future__ import annotations

from border.yoke.positions import Path, Positions
from border.yoke.project import (
    Adjust,
    Attachment,
    Found,
    Label,
    Measured,
    Motif,
    Part,
    Project,
    ProjectThread,
    Sample,
    Strip,
    Words,
    Work,
    WrittenEdge,
    WrittenRun,
    Yoke,
)
from border.yoke.project_file import EdgeTable, MotifTable, ProjectTable, StripTable, YokeTable
from border.yoke.project_work import AttachTable, ThreadTable, WashedTable, WorkTable


def made(table: ProjectTable, at: Positions) -> Project:
    """The project of a checked file, every part with its span from `at`."""
    return Project(
        name=table.name or None,
        hand=table.hand,
        yoke=_yoke(table.yoke, at),
        strips=tuple(_strip(s, at, ("strip", i)) for i, s in enumerate(table.strip)),
        motifs=tuple(_motif(m, at, ("motif", i)) for i, m in enumerate(table.motif)),
        labels=tuple(
            Label(
                m.name,
                _all_words(m.motifs, at, ("label", i, "motifs")),
                at.value(("label", i, "name")),
            )
            for i, m in enumerate(table.label)
        ),
        edges=tuple(_edge(e, at, ("edge", i)) for i, e in enumerate(table.edge)),
        works=tuple(_work(w, at, ("work", i)) for i, w in enumerate(table.work)),
        attachments=tuple(_attached(a, at, ("attach", i)) for i, a in enumerate(table.attach)),
        thread=_thread(table.thread, at),
        seen=_seen(table),
        costs=table.costs.model_dump(exclude_none=True) if table.costs else {},
    )


def _seen(table: ProjectTable) -> dict[str, int]:
    """How visible what bears a name is; of several runs of a section the last that says so."""
    runs = [run for edge in table.edge for run in edge.runs or []]
    said = [(s.name, s.seen) for s in table.strip] + [(m.name, m.seen) for m in table.label]
    said += [(run.section, run.seen) for run in runs]
    return {name: seen for name, seen in said if seen is not None}


def _words(text: str | None, at: Positions, path: Path) -> Words | None:
    return None if text is None else Words(" ".join(text.split()), at.value(path))


def _all_words(texts: list[str], at: Positions, path: Path) -> tuple[Words, ...]:
    return tuple(Words(" ".join(t.split()), at.value((*path, i))) for i, t in enumerate(texts))


def _yoke(t: YokeTable | None, at: Positions) -> Yoke | None:
    if t is None:
        return None
    spans = at.key(("yoke",)), at.value(("yoke", "seam_loops"))
    return Yoke(t.loops, t.of, t.joined, t.seam_loops, t.motif_mm, *spans)


def _strip(t: StripTable, at: Positions, path: Path) -> Strip:
    return Strip(
        name=t.name,
        motifs=t.motifs,
        sides=_all_words(t.sides or [], at, (*path, "sides")),
        sides_span=at.value((*path, "sides")),
        first=_words(t.first, at, (*path, "from")),
        last=_words(t.last, at, (*path, "to")),
        span=at.value((*path, "name")),
    )


def _motif(t: MotifTable, at: Positions, path: Path) -> Motif:
    ring = None if t.ring is None else _all_words(t.ring, at, (*path, "ring"))
    return Motif(
        t.name, ring, _words(t.mirror_of, at, (*path, "mirror_of")), at.value((*path, "name"))
    )


def _edge(t: EdgeTable, at: Positions, path: Path) -> WrittenEdge:
    runs = tuple(
        WrittenRun(r.section, r.motifs, r.places, at.value((*path, "runs", i)))
        for i, r in enumerate(t.runs or [])
    )
    span = at.value((*path, "name"))
    return WrittenEdge(t.name, t.closed, t.of, runs, t.places, span, t.length_mm, t.corners)


def _work(t: WorkTable, at: Positions, path: Path) -> Work:
    found = None
    if t.found is not None:
        counts = t.found.model_dump(exclude_none=True, exclude={"round"})
        found = Found(t.found.round, tuple(counts.items()), at.value((*path, "found")))
    return Work(
        edge=t.edge,
        border=t.border,
        start=_words(t.start, at, (*path, "start")),
        mirror=_all_words(t.mirror, at, (*path, "mirror")),
        done=t.done,
        found=found,
        curve=t.curve,
        adjustments=tuple(
            Adjust(a.round, " ".join(a.at.split()), a.by, at.key((*path, "adjust", i)))
            for i, a in enumerate(t.adjust)
        ),
        span=at.key(path),
        edge_span=at.value((*path, "edge")),
        border_span=at.value((*path, "border")),
        done_span=at.value((*path, "done")),
        measured=tuple(
            Measured(
                m.round,
                "space" if m.spaces else "stitch",
                m.spaces or m.stitches or 1,
                m.mm,
                at.value((*path, "measured", i)),
            )
            for i, m in enumerate(t.measured)
        ),
        turns=t.turns,
    )


def _attached(t: AttachTable, at: Positions, path: Path) -> Attachment:
    return Attachment(
        edge=t.edge,
        over=_all_words(list(t.over), at, (*path, "over")),
        parts=tuple(Part(p.plain_mm, p.gathered_mm, p.cloth_mm) for p in t.parts),
        span=at.key(path),
        edge_span=at.value((*path, "edge")),
        parts_span=at.value((*path, "parts")),
        round=t.round,
        round_span=at.value((*path, "round")),
        stitch_mm=t.stitch_mm,
        cloth_keeps=_keeps(t.cloth_washed),
        lace_keeps=_keeps(t.lace_washed),
    )


def _keeps(t: WashedTable | None) -> float | None:
    return None if t is None else t.after_mm / t.before_mm


def _thread(t: ThreadTable | None, at: Positions) -> ProjectThread | None:
    if t is None:
        return None
    return ProjectThread(
        size=t.size,
        tex=t.tex,
        den=t.den,
        nm=t.nm,
        ne=t.ne,
        hook_mm=t.hook_mm,
        ball_g=t.ball_g,
        ball_m=t.ball_m,
        balls=t.balls,
        waste=t.waste,
        sample=tuple(
            Sample(
                *(s.stitch, s.stitches, s.used_mm, s.width_mm, s.height_mm),
                at.value(("thread", "sample", i, "stitch")),
            )
            for i, s in enumerate(t.sample)
        ),
        span=at.key(("thread",)),
        size_span=at.value(("thread", "size")),
        sample_span=at.key(("thread", "sample")),
    )
