"""The gauge: one loop from hook and thread, and from swatches; its band, against numpy and
scipy, and against borders worked a thousand times over."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from random import Random

import numpy as np
import pytest
from msgspec.structs import replace
from scipy import stats

from border.reckoning.gauge import (
    CLOSEST,
    ONE_SWATCH,
    T_90,
    UNMEASURED,
    Swatch,
    by_hook,
    by_swatches,
    thread_diameter_mm,
)
from border.reckoning.thread import USUAL, Thread, thread_used
from border.stitches import loops_of

TIMES = 1000
KINDS = ("dc", "sc", "ch", "tr", "hdc", "dtr", "ss", "trtr")


def test_the_diameter_follows_from_tex_and_packed_density() -> None:
    # 91 g/km is 91e-6 g/mm; at 0.9e-3 g/mm3 that is 0.1011 mm2, a circle of 0.3588 mm.
    assert thread_diameter_mm(91) == pytest.approx(0.3588, abs=0.0001)
    # Four times the weight of the same length is twice as thick.
    assert thread_diameter_mm(4 * 91) == pytest.approx(2 * thread_diameter_mm(91))


def test_a_loop_goes_once_round_hook_and_thread() -> None:
    # pi x (1.0 + 0.3588) = 4.2688
    gauge = by_hook(91, 1.0)
    assert gauge.loop_mm == pytest.approx(4.2688, abs=0.0005)
    assert (gauge.band, gauge.calibrated) == (UNMEASURED, False)
    assert by_hook(91, 2.0).loop_mm - gauge.loop_mm == pytest.approx(3.14159, abs=0.0001)


def test_a_swatch_says_how_long_a_loop_is() -> None:
    # 40 dc of four loops in 960 mm; 60 chains of one.
    assert Swatch("dc", 40, 960).loop_mm == 6
    assert Swatch("ch", 60, 366).loop_mm == pytest.approx(6.1)
    gauge = by_swatches([Swatch("dc", 40, 960)])
    assert (gauge.loop_mm, gauge.band, gauge.calibrated) == (6, ONE_SWATCH, True)
    assert (gauge.least_mm, gauge.most_mm) == pytest.approx((5.64, 6.36))


def test_several_swatches_by_hand() -> None:
    # Loops of 5.9, 6.0 and 6.1 mm: mean 6.0, s = 0.1; 2.920 x 0.1 x sqrt(4/3) = 0.337 mm.
    swatches = [Swatch("sc", 40, 472), Swatch("dc", 40, 960), Swatch("ch", 60, 366)]
    gauge = by_swatches(swatches)
    assert gauge.loop_mm == pytest.approx(6.0)
    assert gauge.band * 6 == pytest.approx(0.337, abs=0.0005)
    assert [gauge.apart(s) for s in swatches] == pytest.approx([-1 / 60, 0, 1 / 60])


def test_swatches_that_agree_too_well_are_not_believed_to_the_last() -> None:
    assert by_swatches([Swatch("dc", 40, 960), Swatch("sc", 40, 480)]).band == CLOSEST


def test_student_is_student() -> None:
    # scipy.stats, an independent reckoning of the t distribution.
    assert pytest.approx([stats.t.ppf(0.95, df) for df in range(1, 11)], abs=0.0006) == T_90


@pytest.mark.parametrize("n", [2, 3, 5, 8, 14])
def test_the_mean_and_its_band_are_those_of_weighted_least_squares(n: int) -> None:
    """numpy: thread = loop x loops drawn, every swatch out by a share of its own length."""
    draw = Random(n)
    swatches = swatches_of(draw, n, 0.05)
    drawn = np.array([s.stitches * loops_of(s.stitch) for s in swatches], dtype=float)
    used = np.array([s.used_mm for s in swatches])
    weight = 1 / drawn
    solved = np.linalg.lstsq((drawn * weight)[:, None], used * weight, rcond=None)
    loop, left = float(solved[0][0]), float(solved[1][0])
    variance = left / (n - 1)
    df = min(n - 1, len(T_90))
    wide = stats.t.ppf(0.95, df) * np.sqrt(variance * (1 + 1 / n))
    gauge = by_swatches(swatches)
    assert gauge.loop_mm == pytest.approx(loop)
    assert gauge.band * gauge.loop_mm == pytest.approx(wide, rel=0.0005)


# --- does the band hold as often as it says? ---------------------------------------


LOOP = 6.0
"""One loop of the hand that works all of this, in mm."""
LOOPS = 40_000
"""Loops of a border."""


def swatches_of(draw: Random, n: int, noise: float) -> list[Swatch]:
    """Swatches of one hand, each out by its own share of its length."""
    made = []
    for _ in range(n):
        kind, stitches = draw.choice(KINDS), draw.randint(20, 60)
        used = stitches * loops_of(kind) * LOOP * (1 + draw.gauss(0, noise))
        made.append(Swatch(kind, stitches, used))
    return made


def held(
    n: int, noise: float, truth: Callable[[Random, Sequence[Swatch]], float], seed: int = 1
) -> float:
    """How often, of 1000 times, the thread that a border really takes lies in the band."""
    draw = Random(seed * 1000 + n)
    times = 0
    for _ in range(TIMES):
        swatches = swatches_of(draw, n, noise)
        used = thread_used([LOOPS], thread_with(swatches))
        times += used.low_mm <= truth(draw, swatches) <= used.high_mm
    return times / TIMES


def thread_with(swatches: Sequence[Swatch]) -> Thread:
    return replace(USUAL, swatches=tuple(swatches))


@pytest.mark.parametrize("noise", [0.03, 0.08])
@pytest.mark.parametrize("n", [2, 3, 4, 6, 10])
def test_the_band_holds_nine_times_in_ten(n: int, noise: float) -> None:
    """A border worked as one more swatch of the hand. Of 1000 times 900 with a standard
    deviation of 9.5, so 870 to 930."""
    rate = held(n, noise, lambda draw, _: LOOPS * LOOP * (1 + draw.gauss(0, noise)))
    assert 0.87 <= rate <= 0.93


@pytest.mark.parametrize("n", [2, 3, 6])
def test_it_holds_as_often_where_each_kind_of_stitch_is_out_by_its_own_share(n: int) -> None:
    """The loops of a stitch are a model: if a dc really draws 3.8 or 4.3, all dc do."""

    def take(draw: Random) -> tuple[list[Swatch], float]:
        really = {kind: 1 + draw.gauss(0, 0.05) for kind in KINDS}
        worked, of_border = (kinds := draw.sample(KINDS, n + 1))[:n], kinds[n]
        swatches = [Swatch(k, 40, 40 * loops_of(k) * LOOP * really[k]) for k in worked]
        return swatches, LOOPS * LOOP * really[of_border]

    draw = Random(n)
    times = 0
    for _ in range(TIMES):
        swatches, truth = take(draw)
        used = thread_used([LOOPS], thread_with(swatches))
        times += used.low_mm <= truth <= used.high_mm
    assert 0.87 <= times / TIMES <= 0.93


@pytest.mark.parametrize("n", [2, 3, 6])
def test_it_holds_at_least_as_often_for_a_border_worked_more_evenly(n: int) -> None:
    assert held(n, 0.05, lambda *_: LOOPS * LOOP) >= 0.9


def test_it_holds_at_least_as_often_where_swatches_are_better_than_can_be_measured() -> None:
    assert held(4, 0.005, lambda draw, _: LOOPS * LOOP * (1 + draw.gauss(0, 0.005))) >= 0.95


def test_what_the_estimate_for_one_swatch_stands_for() -> None:
    """6 % would be right 9 times in 10 for a hand whose swatches differ by 2.6 %."""
    rate = held(1, 0.026, lambda draw, _: LOOPS * LOOP * (1 + draw.gauss(0, 0.026)))
    assert 0.87 <= rate <= 0.93


def test_a_band_that_is_too_narrow_is_seen() -> None:
    """The simulation tells a wrong band from a right one: six swatches taken for three."""
    draw = Random(7)
    times = 0
    for _ in range(TIMES):
        gauge = by_swatches(swatches_of(draw, 3, 0.05) * 2)
        times += gauge.least_mm <= LOOP * (1 + draw.gauss(0, 0.05)) <= gauge.most_mm
    assert times / TIMES < 0.87
