"""Thread: how much of it the rounds take up, and how far that can be trusted.

The loops drawn in a round (`drawn`), times the length of one loop (`gauge`). Lengths are
in mm, tex in g/km, weights in g.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil, fsum

from msgspec import Struct

from border.findings import Finding
from border.reckoning.gauge import Gauge, Swatch, by_hook, by_swatches
from border.reckoning.sizes import SIZES, Fineness

USUAL_WASTE = 0.15
"""Tails, restarts and a swatch take 10-20 % (common practice)."""

USUAL_SIZE = "40"
USUAL_HOOK_MM = 1.0


class Thread(Struct, frozen=True):
    """A thread and the hook it is worked with.

    `size` is the number on the ball, where one was given. `taken` names what
    was not stated, so that the usual was taken for it: thread, hook. `waste`
    is a share of the length. `balls`: so many are there. `swatches`: measured stitches.
    """

    fineness: Fineness
    hook_mm: float
    size: str | None = None
    ball_g: float | None = None
    ball_m: float | None = None
    waste: float = USUAL_WASTE
    taken: tuple[str, ...] = ()
    balls: float | None = None
    swatches: tuple[Swatch, ...] = ()

    @property
    def tex(self) -> float:
        return self.fineness.tex

    @property
    def gauge(self) -> Gauge:
        """The length of one loop: by the swatches, or with none by hook and thread."""
        if self.swatches:
            return by_swatches(self.swatches)
        return by_hook(self.tex, self.hook_mm)


USUAL = Thread(SIZES[USUAL_SIZE], USUAL_HOOK_MM, USUAL_SIZE, taken=("thread", "hook"))
"""What is reckoned with where no thread is stated."""


class ThreadUse(Struct, frozen=True):
    """Thread in the rounds, waste left out, in mm and grams; the band in `low…` and `high…`.

    `balls`: whole balls to have in hand, reckoned from the upper figure with waste.
    """

    mm: float
    low_mm: float
    high_mm: float
    grams: float
    low_grams: float
    high_grams: float
    balls: int | None
    calibrated: bool


class Ball(Struct, frozen=True):
    """The thread in one ball, in mm, and between what it may lie."""

    mm: float
    low_mm: float
    high_mm: float


def thread_mm(loops: int, thread: Thread) -> float:
    """The thread in so many loops, in mm, to a tenth."""
    return round(loops * thread.gauge.loop_mm, 1)


def thread_used(loops: Sequence[int], thread: Thread) -> ThreadUse:
    """The thread in all rounds together, from the loops of each, in mm to a tenth.

    It is the sum of what `thread_mm` gives for the rounds one by one.
    """
    gauge, fine = thread.gauge, thread.fineness
    mm = round(fsum(thread_mm(n, thread) for n in loops), 1)
    low, high = (round(mm * each / gauge.loop_mm, 1) for each in (gauge.least_mm, gauge.most_mm))
    ball = ball_of(thread)
    return ThreadUse(
        mm=mm,
        low_mm=low,
        high_mm=high,
        grams=round(mm / 1e6 * fine.tex, 2),
        low_grams=round(low / 1e6 * fine.low, 2),
        high_grams=round(high / 1e6 * fine.high, 2),
        balls=ceil(high * (1 + thread.waste) / ball.low_mm) if ball else None,
        calibrated=gauge.calibrated,
    )


def ball_of(thread: Thread) -> Ball | None:
    """One ball; None where none is stated. By weight it is as long as the thread is fine."""
    if thread.ball_m:
        return Ball(*[thread.ball_m * 1000] * 3)
    if thread.ball_g:
        fine = thread.fineness
        return Ball(*(thread.ball_g / tex * 1e6 for tex in (fine.tex, fine.high, fine.low)))
    return None


def ball_in_hand(used: ThreadUse, thread: Thread) -> tuple[int, int] | None:
    """Which ball is being worked from when so much is used (1 the first): by the lower figure,
    and by the upper with waste. None where no ball is stated."""
    ball = ball_of(thread)
    if ball is None:
        return None
    upper = used.high_mm * (1 + thread.waste)
    return max(ceil(used.low_mm / ball.high_mm), 1), max(ceil(upper / ball.low_mm), 1)


# --- in words -------------------------------------------------------------------


def described(thread: Thread) -> str:
    """`No. 40 cotton and a 1 mm hook`, and what of it was not stated."""
    name = f"No. {thread.size} cotton" if thread.size else f"thread of {thread.tex:.3g} tex"
    taken = f" (no {' or '.join(thread.taken)} is stated)" if thread.taken else ""
    return f"{name} and a {thread.hook_mm:g} mm hook{taken}"


def ball_named(thread: Thread) -> str:
    """`20 g`, or `230 m`; nothing where no ball is stated."""
    if thread.ball_g:
        return f"{thread.ball_g:g} g"
    return f"{thread.ball_m:g} m" if thread.ball_m else ""


def trusted(gauge: Gauge) -> str:
    """How far lengths can be trusted, and why: `good to 6 % either way, from one swatch`."""
    good = f"good to {gauge.band * 100:.0f} % either way"
    match len(gauge.swatches):
        case 0:
            return f"{good}, from hook and thread"
        case 1:
            return f"{good}, from one swatch"
        case n:
            return f"{good} 9 times in 10, from {n} swatches"


def uncalibrated(thread: Thread) -> Finding:
    """The note that thread lengths are estimates, and of what thread."""
    if thread.taken:
        help_ = "say which in a project: [thread] with size or tex, and hook_mm"
    else:
        help_ = (
            "work 20 stitches or more, unravel and measure them: under [thread], "
            'sample = [{ stitch = "dc", stitches = 40, used_mm = 690 }]'
        )
    message = f"thread is estimated for {described(thread)}, good to 40 % either way"
    return Finding("thread-uncalibrated", message, help_)
