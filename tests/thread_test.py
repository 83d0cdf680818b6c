"""Thread: lengths, bands, grams and balls worked by hand; what a project states of it."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from border.findings import Finding
from border.reckoning.gauge import Swatch
from border.reckoning.sizes import SIZES, stated
from border.reckoning.thread import (
    USUAL,
    Thread,
    ball_in_hand,
    ball_named,
    ball_of,
    described,
    thread_mm,
    thread_used,
    trusted,
    uncalibrated,
)
from border.reckoning.thread_stated import canonical, stated_thread
from border.text.source import Source
from border.yoke.project import ProjectThread, read_project

DC = Swatch("dc", 40, 960)
HEAD = 'format = 1\n[[edge]]\nname = "cuff"\nplaces = 9\n[thread]\n'


def test_a_round_is_its_loops_to_a_tenth_of_a_mm() -> None:
    # 100 single crochet of two loops: 200 x 4.2688 mm.
    assert thread_mm(200, USUAL) == 853.8
    assert thread_mm(0, USUAL) == 0
    # 40 dc of four loops in 960 mm: 6 mm a loop.
    assert thread_mm(200, replace(USUAL, swatches=(DC,))) == 1200


def test_the_total_is_the_sum_of_the_rounds_as_shown() -> None:
    rounds = [7, 7, 7, 11, 13]
    used = thread_used(rounds, USUAL)
    assert used.mm == pytest.approx(sum(thread_mm(n, USUAL) for n in rounds))
    assert not used.calibrated


def test_the_band_is_that_of_the_gauge() -> None:
    used = thread_used([100_000], USUAL)
    assert used.low_mm == pytest.approx(0.6 * used.mm, abs=0.1)
    assert used.high_mm == pytest.approx(1.4 * used.mm, abs=0.1)
    measured = thread_used([100_000], replace(USUAL, swatches=(DC,)))
    assert (measured.low_mm, measured.mm, measured.high_mm) == (564_000, 600_000, 636_000)
    assert measured.calibrated


def test_swatches_that_say_nothing_leave_no_length_below_nothing() -> None:
    apart = replace(USUAL, swatches=(DC, Swatch("dc", 40, 1920)))
    # Loops of 6 and 12 mm: 9 mm, s = 4.24, t = 6.314: 365 % either way; at most 4.8 m with waste.
    assert apart.gauge.band == pytest.approx(3.645, abs=0.001)
    assert thread_used([100], apart).low_mm == 0
    assert ball_in_hand(thread_used([100], apart), replace(apart, ball_m=1)) == (1, 5)


def test_grams_are_the_length_at_its_weight_and_makers_differ() -> None:
    # 426.9 m at 91 g/km is 38.8 g; 256.1 m at 82 is 21.0 g, 597.6 m at 100 is 59.8 g.
    used = thread_used([100_000], USUAL)
    assert used.grams == pytest.approx(38.85, abs=0.01)
    assert used.low_grams == pytest.approx(21.0, abs=0.01)
    assert used.high_grams == pytest.approx(59.76, abs=0.01)


def test_balls_are_whole_from_the_upper_figure_with_waste() -> None:
    # 426.88 m; 40 % more is 597.6 m; 15 % waste on it 687.3 m: 68.7 g at 100 tex, so 4
    # balls of 20 g.
    loops = [100_000]
    assert thread_used(loops, replace(USUAL, ball_g=20)).balls == 4
    # In balls of 160 m: 687.3 / 160 = 4.3, so 5.
    assert thread_used(loops, replace(USUAL, ball_m=160)).balls == 5
    # Without waste 597.6 / 160 = 3.7, so 4.
    assert thread_used(loops, replace(USUAL, ball_m=160, waste=0)).balls == 4
    assert thread_used(loops, USUAL).balls is None


def test_a_ball_by_weight_is_as_long_as_its_thread_is_fine() -> None:
    ball = ball_of(replace(USUAL, ball_g=20))
    assert ball is not None
    # 20 g at 91, 100 and 82 g/km.
    assert (round(ball.mm), round(ball.low_mm), round(ball.high_mm)) == (219_780, 200_000, 243_902)
    exact = ball_of(Thread(stated(80), 1.0, ball_g=20))
    assert exact is not None
    assert (exact.mm, exact.low_mm, exact.high_mm) == (250_000, 250_000, 250_000)
    long = ball_of(replace(USUAL, ball_g=20, ball_m=230))
    assert long is not None
    assert (long.low_mm, long.high_mm) == (230_000, 230_000)
    assert ball_of(USUAL) is None


def test_which_ball_is_in_hand() -> None:
    thread = replace(USUAL, ball_m=100, waste=0.1, swatches=(DC,))
    # 300 m, 282 to 318; with waste 349.8.
    assert ball_in_hand(thread_used([50_000], thread), thread) == (3, 4)
    assert ball_in_hand(thread_used([], thread), thread) == (1, 1)


# --- what a project states ------------------------------------------------------


def project_thread(text: str) -> ProjectThread:
    project, findings = read_project(Source("cuff.toml", HEAD + text))
    assert findings == ()
    assert project is not None
    assert project.thread is not None
    return project.thread


def thread_of(text: str) -> Thread:
    thread, findings = stated_thread(project_thread(text))
    assert findings == ()
    return thread


def told(text: str) -> list[tuple[Finding, str]]:
    """The findings of a thread, with what they point at."""
    whole = HEAD + text
    project, faults = read_project(Source("cuff.toml", whole))
    assert project is not None
    _, doubts = stated_thread(project.thread)
    found = []
    for f in (*faults, *doubts):
        assert f.span is not None
        found.append((f, whole[f.span.start : f.span.end]))
    return found


def test_a_project_states_its_thread() -> None:
    assert thread_of('size = "No. 60"\nhook_mm = 0.75\nball_g = 20\nwaste = 0.1') == Thread(
        SIZES["60"], hook_mm=0.75, size="60", ball_g=20, waste=0.1
    )
    by_tex = thread_of("tex = 102\nhook_mm = 1.25\nball_m = 120\nballs = 2")
    assert by_tex == Thread(stated(102), hook_mm=1.25, ball_m=120, waste=0.15, balls=2)


@pytest.mark.parametrize(
    ("said", "tex"),
    [("den = 900", 100), ("nm = 10", 100), ("ne = 5.905412", 100), ("tex = 100", 100)],
)
def test_a_thread_may_be_stated_in_any_system(said: str, tex: float) -> None:
    thread = thread_of(f"{said}\nhook_mm = 1.0")
    assert thread.tex == pytest.approx(tex, rel=1e-6)
    assert thread.fineness.exact
    assert thread.taken == ()


def test_a_ball_weighed_and_measured_says_how_fine_it_is() -> None:
    assert thread_of("ball_g = 20\nball_m = 250\nhook_mm = 1.0").fineness == stated(80)
    thread = thread_of('size = "40"\nball_g = 20\nball_m = 250\nhook_mm = 1.0')
    assert (thread.fineness, thread.size, ball_named(thread)) == (stated(80), "40", "20 g")


def test_for_what_is_not_stated_the_usual_is_taken_and_named() -> None:
    assert stated_thread(None) == (USUAL, ())
    hook = thread_of("hook_mm = 0.75")
    assert (hook.tex, hook.hook_mm, hook.taken) == (91, 0.75, ("thread",))
    size = thread_of('size = "80"')
    assert (size.tex, size.hook_mm, size.taken) == (54, 1.0, ("hook",))


def test_with_an_unknown_size_the_usual_is_reckoned_with_and_the_fault_told() -> None:
    thread, (finding,) = stated_thread(project_thread('size = "45"\nhook_mm = 0.75'))
    assert (thread.tex, thread.size, thread.hook_mm) == (91, "40", 0.75)
    assert finding.code == "bad-value"
    assert told('size = "45"')[0][1] == '"45"'


@pytest.mark.parametrize(
    ("name", "stitch"),
    [("dc", "dc"), ("Double crochet", "dc"), ("sl st", "ss"), ("ss", "ss"), ("ch", "ch")],
)
def test_a_swatch_is_of_a_stitch_by_its_us_name(name: str, stitch: str) -> None:
    assert canonical(name) == stitch
    text = f'sample = [{{ stitch = "{name}", stitches = 40, used_mm = 960 }}]'
    assert thread_of(text).swatches == (Swatch(stitch, 40, 960),)


def test_a_stitch_that_there_is_not_is_told_and_left_out() -> None:
    text = (
        'sample = [{ stitch = "dc", stitches = 40, used_mm = 960 },\n'
        '{ stitch = "htr", stitches = 40, used_mm = 700 }]'
    )
    ((finding, at),) = told(text)
    assert (finding.code, at) == ("bad-value", '"htr"')
    assert finding.help == "the stitches are ch, ss, sc, hdc, dc, tr, dtr, trtr"
    thread, _ = stated_thread(project_thread(text))
    assert thread.swatches == (DC,)


@pytest.mark.parametrize(("used", "wrong"), [(96, True), (960, False), (9600, True)])
def test_a_swatch_in_cm_is_seen(used: float, wrong: bool) -> None:
    text = f'size = "40"\nhook_mm = 1.0\nsample = [{{ stitch = "dc", stitches = 40, used_mm = {used} }}]'
    found = told(text)
    assert [(f.code, at) for f, at in found] == ([("sample-unlikely", '"dc"')] if wrong else [])
    # Where nobody has said what thread and hook it is, nothing can be expected of a swatch.
    assert not told(text.replace("hook_mm = 1.0\n", ""))


def test_swatches_that_disagree_are_told_of() -> None:
    text = (
        'sample = [{ stitch = "dc", stitches = 40, used_mm = 960 },\n'
        '{ stitch = "sc", stitches = 40, used_mm = 430 }]'
    )
    ((finding, at),) = told(text)
    assert (finding.code, at) == ("samples-disagree", "sample")
    assert "(dc 6 mm, sc 5.4 mm)" in finding.message
    assert not told(text.replace("430", "460"))


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("tex = 91\nden = 820", "the thread has a tex, and a den too"),
        ('size = "40"\nne = 6', "the thread has a size, and a ne too"),
        ("nm = 0", '"nm" must be more than 0, not 0'),
        ("nm = 1e-300", "1e-300 is too little to be measured"),
        ("ball_g = 1e-320", "9.99989e-321 is too little to be measured"),
        ("balls = 0", '"balls" must be more than 0, not 0'),
        (
            "ball_g = 20\nball_m = 230\nnm = 11",
            "the ball's grams and metres say how fine the thread is, and nm too",
        ),
    ],
)
def test_a_thread_is_stated_once_and_with_figures_that_can_be(text: str, message: str) -> None:
    ((finding, _),) = told(text)
    assert (finding.code, finding.message) == ("bad-value", message)


# --- in words -------------------------------------------------------------------


def test_the_note_says_what_was_taken() -> None:
    note = uncalibrated(USUAL)
    assert note.code == "thread-uncalibrated"
    assert "No. 40 cotton and a 1 mm hook (no thread or hook is stated)" in note.message
    assert "40 % either way" in note.message
    known = uncalibrated(Thread(stated(102), hook_mm=1.25))
    assert "thread of 102 tex and a 1.25 mm hook, good" in known.message
    assert known.help is not None
    assert thread_of(known.help.partition("[thread], ")[2]).swatches == (Swatch("dc", 40, 690),)


def test_what_lengths_are_good_for_is_said_with_its_reason() -> None:
    assert trusted(USUAL.gauge) == "good to 40 % either way, from hook and thread"
    one = replace(USUAL, swatches=(DC,))
    assert trusted(one.gauge) == "good to 6 % either way, from one swatch"
    two = replace(USUAL, swatches=(DC, DC))
    assert trusted(two.gauge) == "good to 2 % either way 9 times in 10, from 2 swatches"
    assert described(Thread(stated(1000 / 3), 1.5)) == "thread of 333 tex and a 1.5 mm hook"


@pytest.mark.parametrize("figure", [0.001, 1_000_000])
@pytest.mark.parametrize("key", ["tex", "den", "nm", "ne", "hook_mm", "ball_g", "ball_m"])
def test_whatever_can_be_written_can_be_reckoned(key: str, figure: float) -> None:
    thread = thread_of(f"{key} = {figure}")
    used = thread_used([1, 1_000_000], replace(thread, ball_g=thread.ball_g or 20))
    assert 0 < used.low_mm < used.mm < used.high_mm < float("inf")
    assert used.balls is not None and used.balls >= 1
    assert described(thread)
