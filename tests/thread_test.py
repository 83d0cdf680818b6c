"""Thread: the model's figures worked by hand, sizes, the band, balls."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from border.findings import Span
from border.reckoning.thread import (
    SIZES,
    USUAL,
    Thread,
    loop_mm,
    stated_thread,
    tex_of_size,
    thread_diameter_mm,
    thread_mm,
    thread_used,
    uncalibrated,
)
from border.text.source import Source
from border.yoke.project import ProjectThread, read_project


def test_sizes_are_those_of_the_table_of_measured_threads() -> None:
    # tattingcorner.com, measured threads: size number to tex.
    assert SIZES == {
        "10": 184, "20": 129, "30": 102, "40": 91, "50": 87, "60": 66, "80": 54, "100": 51,
    }  # fmt: skip


def test_the_diameter_follows_from_tex_and_packed_density() -> None:
    # 91 g/km is 91e-6 g/mm; at 0.9e-3 g/mm3 that is 0.1011 mm2, a circle of 0.3588 mm.
    assert thread_diameter_mm(91) == pytest.approx(0.3588, abs=0.0001)
    # Four times the weight of the same length is twice as thick.
    assert thread_diameter_mm(4 * 91) == pytest.approx(2 * thread_diameter_mm(91))


def test_a_loop_goes_once_round_hook_and_thread() -> None:
    # pi x (1.0 + 0.3588) = 4.2688
    assert loop_mm(USUAL) == pytest.approx(4.2688, abs=0.0005)
    thicker = replace(USUAL, hook_mm=2.0)
    assert loop_mm(thicker) - loop_mm(USUAL) == pytest.approx(3.14159, abs=0.0001)


def test_a_round_is_its_loops_to_a_tenth_of_a_mm() -> None:
    # 100 single crochet of two loops: 200 x 4.2688 mm.
    assert thread_mm(200, USUAL) == 853.8
    assert thread_mm(0, USUAL) == 0


def test_the_total_is_the_sum_of_the_rounds_as_shown() -> None:
    rounds = [7, 7, 7, 11, 13]
    used = thread_used(rounds, USUAL)
    assert used.mm == pytest.approx(sum(thread_mm(n, USUAL) for n in rounds))
    assert not used.calibrated


def test_the_band_is_forty_in_a_hundred_either_way() -> None:
    used = thread_used([100_000], USUAL)
    assert used.low_mm == pytest.approx(0.6 * used.mm, abs=0.1)
    assert used.high_mm == pytest.approx(1.4 * used.mm, abs=0.1)


def test_grams_are_the_length_at_its_weight() -> None:
    # 426.9 m at 91 g/km is 38.8 g.
    assert thread_used([100_000], USUAL).grams == pytest.approx(38.85, abs=0.01)


def test_balls_are_whole_from_the_upper_figure_with_waste() -> None:
    # 426.88 m; 40 % more is 597.6 m; 15 % waste on it 687.3 m: 62.5 g, so 4 balls of 20 g.
    loops = [100_000]
    assert thread_used(loops, replace(USUAL, ball_g=20)).balls == 4
    # In balls of 160 m: 687.3 / 160 = 4.3, so 5.
    assert thread_used(loops, replace(USUAL, ball_m=160)).balls == 5
    # Without waste 597.6 / 160 = 3.7, so 4.
    assert thread_used(loops, replace(USUAL, ball_m=160, waste=0)).balls == 4
    assert thread_used(loops, USUAL).balls is None


@pytest.mark.parametrize("size", ["40", " 40 ", "No. 40", "no 40", "No.40"])
def test_a_size_may_be_written_as_on_the_ball(size: str) -> None:
    assert tex_of_size(size) == (91.0, ())


def test_an_unknown_size_names_those_that_are_known() -> None:
    span = Span("yoke.toml", 3, 7)
    tex, (finding,) = tex_of_size("45", span)
    assert tex is None
    assert finding.code == "bad-value"
    assert finding.span == span
    assert "45" in finding.message
    assert finding.help is not None
    assert "10, 20, 30, 40, 50, 60, 80, 100" in finding.help
    assert "tex" in finding.help


def project_thread(text: str) -> ProjectThread:
    head = 'format = 1\n[[edge]]\nname = "cuff"\nplaces = 9\n[thread]\n'
    project, findings = read_project(Source("cuff.toml", head + text))
    assert findings == ()
    assert project is not None
    assert project.thread is not None
    return project.thread


def test_a_project_states_its_thread() -> None:
    thread, findings = stated_thread(
        project_thread('size = "No. 60"\nhook_mm = 0.75\nball_g = 20\nwaste = 0.1')
    )
    assert findings == ()
    assert thread == Thread(tex=66, hook_mm=0.75, size="60", ball_g=20, waste=0.1)
    by_tex, _ = stated_thread(project_thread("tex = 102\nhook_mm = 1.25\nball_m = 120"))
    assert by_tex == Thread(tex=102, hook_mm=1.25, ball_m=120, waste=0.15)


def test_for_what_is_not_stated_the_usual_is_taken_and_named() -> None:
    assert stated_thread(None) == (USUAL, ())
    hook, _ = stated_thread(project_thread("hook_mm = 0.75"))
    assert (hook.tex, hook.hook_mm, hook.taken) == (91, 0.75, ("thread",))
    size, _ = stated_thread(project_thread('size = "80"'))
    assert (size.tex, size.hook_mm, size.taken) == (54, 1.0, ("hook",))


def test_with_an_unknown_size_the_usual_is_reckoned_with_and_the_fault_told() -> None:
    thread, (finding,) = stated_thread(project_thread('size = "45"\nhook_mm = 0.75'))
    assert (thread.tex, thread.size, thread.hook_mm) == (91, "40", 0.75)
    assert finding.code == "bad-value"
    assert finding.span is not None


def test_the_note_says_what_was_taken() -> None:
    note = uncalibrated(USUAL)
    assert note.code == "thread-uncalibrated"
    assert "No. 40 cotton and a 1 mm hook (no thread or hook is stated)" in note.message
    assert "40 % either way" in note.message
    stated = uncalibrated(Thread(tex=102, hook_mm=1.25))
    assert "thread of 102 tex and a 1.25 mm hook, good" in stated.message
    assert "not reckoned from it yet" in (uncalibrated(USUAL, samples=1).help or "")
