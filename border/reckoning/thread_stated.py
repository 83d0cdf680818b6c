"""From the [thread] of a project to the thread that is reckoned with, and what is wrong in it."""

from __future__ import annotations

from collections.abc import Sequence

from border.findings import Finding
from border.reckoning.gauge import UNMEASURED, Gauge, Swatch, by_hook, by_swatches
from border.reckoning.sizes import (
    Fineness,
    bare_size,
    of_size,
    stated,
    tex_of_den,
    tex_of_ne,
    tex_of_nm,
)
from border.reckoning.thread import USUAL, USUAL_WASTE, Thread
from border.stitches import STITCHES
from border.text.vocabulary import vocabulary
from border.yoke.project import ProjectThread, Sample

UNLIKELY = 2.0
"""A swatch whose loop is so many times longer or shorter than hook and thread let one
expect has most likely been written down wrongly (estimate)."""


def stated_thread(said: ProjectThread | None) -> tuple[Thread, tuple[Finding, ...]]:
    """The thread that a project states, the usual taken for what it leaves out.

    Findings: `bad-value`, `sample-unlikely`, `samples-disagree`.
    """
    if said is None:
        return USUAL, ()
    fineness, findings = _fineness(said)
    swatches, told = _swatches(said.sample)
    taken = [] if fineness or said.size else ["thread"]
    taken += [] if said.hook_mm else ["hook"]
    size = said.size and bare_size(said.size)
    thread = Thread(
        fineness=fineness or USUAL.fineness,
        hook_mm=said.hook_mm or USUAL.hook_mm,
        size=USUAL.size if fineness is None else size,
        ball_g=said.ball_g,
        ball_m=said.ball_m,
        waste=USUAL_WASTE if said.waste is None else said.waste,
        taken=tuple(taken),
        balls=said.balls,
        swatches=tuple(swatch for swatch, _ in swatches),
    )
    doubts = _doubts(thread, swatches, said)
    return thread, (*findings, *told, *doubts)


def _fineness(said: ProjectThread) -> tuple[Fineness | None, tuple[Finding, ...]]:
    """How fine the thread is, by what the project gives; a ball that is weighed and measured
    says it better than the number on it."""
    if said.ball_g and said.ball_m:
        return stated(1000 * said.ball_g / said.ball_m), ()
    if said.tex:
        return stated(said.tex), ()
    if said.den:
        return stated(tex_of_den(said.den)), ()
    if said.nm:
        return stated(tex_of_nm(said.nm)), ()
    if said.ne:
        return stated(tex_of_ne(said.ne)), ()
    return of_size(said.size, said.size_span) if said.size is not None else (None, ())


def _swatches(
    samples: Sequence[Sample],
) -> tuple[list[tuple[Swatch, Sample]], list[Finding]]:
    """The samples as swatches, each beside what was said of it."""
    found: list[tuple[Swatch, Sample]] = []
    findings: list[Finding] = []
    for sample in samples:
        if (stitch := canonical(sample.stitch)) is None:
            findings.append(_no_such_stitch(sample))
        else:
            found.append((Swatch(stitch, sample.stitches, sample.used_mm), sample))
    return found, findings


def canonical(name: str) -> str | None:
    """A stitch by its US name, short or in full, or `ch`; None where there is none such."""
    said = " ".join(name.casefold().replace("-", " ").split()).removesuffix(" crochet")
    if said in ("ch", "chain"):
        return "ch"
    names = vocabulary().stitches
    return next((s for s in STITCHES if said == s or said in names[s]["us"]), None)


def _no_such_stitch(sample: Sample) -> Finding:
    return Finding(
        "bad-value",
        f'"{sample.stitch}" is no stitch by its US name',
        f"the stitches are ch, {', '.join(STITCHES)}",
        sample.span,
    )


def _doubts(
    thread: Thread, swatches: Sequence[tuple[Swatch, Sample]], said: ProjectThread
) -> list[Finding]:
    """What in the swatches looks like a slip of the pen."""
    findings = []
    expected = by_hook(thread.tex, thread.hook_mm)
    for swatch, sample in swatches:
        times = swatch.loop_mm / expected.loop_mm
        if not thread.taken and not 1 / UNLIKELY < times < UNLIKELY:
            findings.append(_unlikely(swatch, sample, expected))
    kept = [swatch for swatch, _ in swatches]
    if len(kept) > 1 and (gauge := by_swatches(kept)).band > UNMEASURED:
        findings.append(_disagree(gauge, said))
    return findings


def _unlikely(swatch: Swatch, sample: Sample, expected: Gauge) -> Finding:
    return Finding(
        "sample-unlikely",
        f"{sample.stitches} {sample.stitch} in {sample.used_mm:g} mm make one loop "
        f"{swatch.loop_mm:.2g} mm long; by hook and thread it would be about "
        f"{expected.loop_mm:.2g} mm",
        "look at stitches and used_mm again (all the thread unravelled, in mm), and at hook_mm",
        sample.span,
    )


def _disagree(gauge: Gauge, said: ProjectThread) -> Finding:
    each = ", ".join(f"{s.stitch} {s.loop_mm:.2g} mm" for s in gauge.swatches)
    return Finding(
        "samples-disagree",
        f"the samples make one loop so differently long ({each}) that they are good to "
        f"{gauge.band * 100:.0f} % either way, no better than none",
        "measure them again, or work one or two more: a third and a fourth narrow it most",
        said.sample_span,
    )
