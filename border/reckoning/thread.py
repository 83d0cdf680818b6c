"""Thread: how much of it the rounds take up, and how far that can be trusted.

A stitch draws a known number of loops (`border.stitches`); a loop that has not
been calibrated on one's own stitches is as long as once round the hook and the
thread: pi x (hook diameter + thread diameter). The thread's diameter follows
from its tex and a packed density of 0.9 g/cm3, an estimate for mercerised
cotton. Trust it to 40 % either way. Lengths are in mm, tex in g/km.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil, pi, sqrt

from msgspec import Struct

from border.findings import Finding, Span
from border.yoke.project import ProjectThread

SIZES: dict[str, int] = {
    "10": 184,
    "20": 129,
    "30": 102,
    "40": 91,
    "50": 87,
    "60": 66,
    "80": 54,
    "100": 51,
}
"""Size numbers of crochet cotton to tex, from a table of measured threads
(tattingcorner.com). Makers differ by 10 % and more."""

PACKED_DENSITY = 0.9e-3
"""Grams in one mm3 of packed thread: an estimate for mercerised cotton."""

BAND = 0.40
"""How far an uncalibrated length can be out, either way."""

USUAL_WASTE = 0.15
"""Tails, restarts and a swatch take 10-20 % (common practice)."""

USUAL_SIZE = "40"
USUAL_HOOK_MM = 1.0


class Thread(Struct, frozen=True):
    """A thread and the hook it is worked with.

    `size` is the number on the ball, where one was given. `taken` names what
    was not stated, so that the usual was taken for it: thread, hook. `waste`
    is a share of the length.
    """

    tex: float
    hook_mm: float
    size: str | None = None
    ball_g: float | None = None
    ball_m: float | None = None
    waste: float = USUAL_WASTE
    taken: tuple[str, ...] = ()


USUAL = Thread(SIZES[USUAL_SIZE], USUAL_HOOK_MM, USUAL_SIZE, taken=("thread", "hook"))
"""What is reckoned with where no thread is stated."""


class ThreadUse(Struct, frozen=True):
    """Thread in the rounds, waste left out, in mm and grams; the band in `low_mm`, `high_mm`.

    `balls`: whole balls to have in hand, reckoned from the upper figure with waste.
    """

    mm: float
    low_mm: float
    high_mm: float
    grams: float
    balls: int | None
    calibrated: bool


def stated_thread(stated: ProjectThread | None) -> tuple[Thread, tuple[Finding, ...]]:
    """The thread that a project states, the usual taken for what it leaves out."""
    if stated is None:
        return USUAL, ()
    tex, size = stated.tex, stated.size
    findings: tuple[Finding, ...] = ()
    if size is not None:
        tex, findings = tex_of_size(size, stated.size_span)
    taken = [] if stated.tex or stated.size else ["thread"]
    taken += [] if stated.hook_mm else ["hook"]
    thread = Thread(
        tex=tex or USUAL.tex,
        hook_mm=stated.hook_mm or USUAL.hook_mm,
        size=USUAL.size if tex is None else size and bare_size(size),
        ball_g=stated.ball_g,
        ball_m=stated.ball_m,
        waste=USUAL_WASTE if stated.waste is None else stated.waste,
        taken=tuple(taken),
    )
    return thread, findings


def bare_size(size: str) -> str:
    """`40` of `No. 40`."""
    return size.strip().lower().removeprefix("no").lstrip(". ").strip()


def tex_of_size(size: str, span: Span | None = None) -> tuple[float | None, tuple[Finding, ...]]:
    """The tex of a size number (`40`, `No. 40`), or the finding `bad-value`."""
    number = bare_size(size)
    if number in SIZES:
        return float(SIZES[number]), ()
    known = ", ".join(SIZES)
    return None, (
        Finding(
            "bad-value",
            f'size "{size}" is not in the table of measured threads',
            f"the sizes known are {known}; for another thread write, in place of size, "
            "tex = N, the grams that 1000 m of it weigh",
            span,
        ),
    )


def thread_diameter_mm(tex: float) -> float:
    """The diameter of a thread, packed, in mm, from its tex (g/km)."""
    area = tex / 1e6 / PACKED_DENSITY
    return 2 * sqrt(area / pi)


def loop_mm(thread: Thread) -> float:
    """The length of one loop that has not been calibrated, in mm."""
    return pi * (thread.hook_mm + thread_diameter_mm(thread.tex))


def thread_mm(loops: int, thread: Thread) -> float:
    """The thread in so many loops, in mm, to a tenth."""
    return round(loops * loop_mm(thread), 1)


def thread_used(loops: Sequence[int], thread: Thread) -> ThreadUse:
    """The thread in all rounds together, from the loops of each, in mm to a tenth.

    It is the sum of what `thread_mm` gives for the rounds one by one.
    """
    mm = round(sum(thread_mm(n, thread) for n in loops), 1)
    high = round(mm * (1 + BAND), 1)
    return ThreadUse(
        mm=mm,
        low_mm=round(mm * (1 - BAND), 1),
        high_mm=high,
        grams=round(mm / 1e6 * thread.tex, 2),
        balls=_balls(high * (1 + thread.waste), thread),
        calibrated=False,
    )


def described(thread: Thread) -> str:
    """`No. 40 cotton and a 1 mm hook`, and what of it was not stated."""
    name = f"No. {thread.size} cotton" if thread.size else f"thread of {thread.tex:g} tex"
    taken = f" (no {' or '.join(thread.taken)} is stated)" if thread.taken else ""
    return f"{name} and a {thread.hook_mm:g} mm hook{taken}"


def uncalibrated(thread: Thread, samples: int = 0) -> Finding:
    """The note that thread lengths are estimates, and of what thread."""
    if samples:
        help_ = "the sample in the project is kept, but thread is not reckoned from it yet"
    elif thread.taken:
        help_ = "say which in a project: [thread] with size or tex, and hook_mm"
    else:
        help_ = "a thread weighed and measured (tex, hook_mm) makes the estimate better"
    message = f"thread is estimated for {described(thread)}, good to {BAND * 100:.0f} % either way"
    return Finding("thread-uncalibrated", message, help_)


def ball_mm(thread: Thread) -> float | None:
    """The thread in one ball, in mm; None where no ball is stated."""
    if thread.ball_m:
        return thread.ball_m * 1000
    return thread.ball_g / thread.tex * 1e6 if thread.ball_g else None


def ball_in_hand(used: ThreadUse, thread: Thread) -> tuple[int, int] | None:
    """Which ball is being worked from when so much is used (1 the first): by the lower figure,
    and by the upper with waste. None where no ball is stated."""
    ball = ball_mm(thread)
    if ball is None:
        return None
    upper = used.high_mm * (1 + thread.waste)
    return max(ceil(used.low_mm / ball), 1), max(ceil(upper / ball), 1)


def _balls(mm: float, thread: Thread) -> int | None:
    if thread.ball_m:
        return ceil(mm / 1000 / thread.ball_m)
    if thread.ball_g:
        return ceil(mm / 1e6 * thread.tex / thread.ball_g)
    return None
