"""What a row needs of the sites that it works into, as its trials tell it."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct
from msgspec.structs import replace

from border.planning.series import Series, apart, as_one
from border.planning.trials import Trial
from border.text.readings import Round
from border.text.steps import named_targets, walk
from border.text.tree import Begin, End, Repeat, Text, Whole
from border.working.repeats import meets_start


class Rule(Struct, frozen=True):
    """`a multiple of multiple plus plus, at least least` sites of the kind `of`.

    `multiple` and `plus` None: there is no such rule; then it may be one number
    (`exactly`), or one multiple or another (`either`).
    """

    of: str
    multiple: int | None = None
    plus: int | None = None
    least: int | None = None
    exactly: int | None = None
    either: tuple[Series, ...] = ()


def growers(trials: Sequence[Trial]) -> list[int]:
    """Which repeats of a row are made more often the larger the edge."""
    first, last = trials[0].repeats, trials[-1].repeats
    return [i for i, (a, b) in enumerate(zip(first, last, strict=True)) if b.times > a.times]


def made_again(trial: Trial) -> list[int]:
    """The numbers of the repeats that are made more than once."""
    return [i for i, repeat in enumerate(trial.repeats) if repeat.times > 1]


def rule_of(trials: Sequence[Trial], growing: Sequence[int] | None = None) -> Rule:
    """What a row needs by its last growing repeat: its M, and the A of the first sure trial.

    `least` is that of one repeat made once.
    """
    growing = growers(trials) if growing is None else growing
    if not growing:
        of = trials[0].repeats[-1].of if trials[0].repeats else trials[0].of
        return Rule(of)
    repeats = [(trial.sure, trial.repeats[growing[-1]]) for trial in trials]
    usual = max((repeat for _, repeat in repeats), key=lambda repeat: repeat.times)
    for sure, repeat in repeats:
        if sure and repeat.times:
            plus = repeat.offered - repeat.over - usual.takes * repeat.times
            return Rule(usual.of, usual.takes, plus % usual.takes, usual.takes + plus)
    return Rule(usual.of, usual.takes)


def foretells(round_: Round, growing: Sequence[int]) -> bool:
    """Whether one trial tells the one remainder: a row of one repeat into sites of one kind."""
    assert isinstance(round_.body, Text)
    items = round_.body.items
    named = {target for item in walk(items) for target in named_targets(item)}
    whole = len(named) == 1 and all(isinstance(target, Whole) for target in named)
    return whole and len(growing) == 1 and not can_meet(round_)


def can_meet(round_: Round) -> bool:
    """Whether a row may end on the steps that it began with, if it goes round."""
    if not isinstance(round_.body, Text):
        return False
    items = tuple(item for item in round_.body.items if not isinstance(item, End))
    if len(items) < 2 or not isinstance(repeat := items[-1], Repeat):
        return False
    if repeat.times is not None or repeat.to_last is not None:
        return False
    begun = items[0].place if isinstance(items[0], Begin) else None
    steps = range(1, len(repeat.items))
    return any(meets_start(begun, repeat.items[i:], items[:-1]) for i in steps)


def widened(rule: Rule, closing: Sequence[int]) -> Rule:
    """The rule with all numbers of sites on which the row was seen to close."""
    if rule.multiple is None:
        return rule
    remainders = {n % rule.multiple for n in closing}
    if rule.plus is not None:
        remainders.add(rule.plus)
    classes = [Series(rule.multiple, x) for x in sorted(remainders)]
    together = as_one(classes)
    if together is None:
        either = apart(classes)
        return replace(rule, multiple=None, plus=None, least=None, either=either)
    return replace(rule, multiple=together.step, plus=together.first % together.step)
