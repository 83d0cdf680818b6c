"""Whether a text that has been worked closes, and passes evenly (section "Closing")."""

from __future__ import annotations

from border.text.tree import Begin, Skip, Target, Whole
from plainly.cursor import counted_as, lies_ahead, overlap
from plainly.hand import PASSED, WORKED
from plainly.openings import named, steps
from plainly.rows import Work
from plainly.runs import Run, Working
from plainly.sites import Site, meant_target


def left_over(work: Work, run: Run) -> list[Site]:
    """What was left where the repeat stopped, and no later step works or skips."""
    later = [use for use in work.uses[run.used_before :] if use.how != PASSED]
    return [x for x in run.left if not any(overlap(use.site, x) for use in later)]


def closes(work: Work) -> bool:
    """No step runs out, no repeat leaves anything, and nothing is left beyond the cursor."""
    if work.ran_out or any(not run.fine or left_over(work, run) for run in work.runs):
        return False
    if work.runs and work.runs[-1].met:
        return True
    kinds = work.runs[-1].kinds if work.runs else worked_kinds(work)
    return not work.ahead(kinds)


def worked_kinds(work: Work) -> tuple[Target, ...]:
    """Every kind that the text works into; of a union that is worked, each.

    A bare stitch of a joint goes into the joint itself.
    """
    found = [counted_as(use.site.target) for use in work.uses if use.how == WORKED]
    for item in steps(work.items):
        union = [counted_as(meant_target(work.window.fabric, t)) for t in named(item)]
        if len(union) > 1 and not isinstance(item, Skip | Begin) and set(union) & set(found):
            found += union
    if work.window.what == "joint":
        found = [kind for kind in found if kind.of.name != "joint"]
    return tuple(dict.fromkeys(found))


def passes_more(work: Work) -> bool:
    """Whether a repeat silently passes over more of a kind than most of its repeats do.

    Most: more than half of them pass fewer.
    """
    for run in work.runs:
        for kind in dict.fromkeys(Whole(kind.of) for kind in worked_kinds(work)):
            passed = [_passed(work, kind, working) for working in run.workings]
            for number in passed:
                if 2 * sum(other < number for other in passed) > len(passed):
                    return True
    return False


def _passed(work: Work, kind: Target, working: Working) -> int:
    """Sites that one working has gone beyond, and that no step has worked or skipped."""
    return sum(
        lies_ahead(x, working.before)
        and not lies_ahead(x, working.after)
        and not any(overlap(use.site, x) for use in work.uses)
        for x in work.sites(kind)
    )
