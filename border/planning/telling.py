"""What is told of a border's needs: in words, and why there may be no one rule."""

from __future__ import annotations

from collections.abc import Iterable

from msgspec.structs import replace

from border.findings import Finding
from border.planning.rules import Rule
from border.planning.series import Series
from border.stitches import STITCHES
from border.text.readings import Reading, Round

_ALIKE = {*STITCHES, "st", "ch"}
"""Names that are the same of one and of several."""


def several(of: str) -> str:
    """A kind of site in the plural: `loops`, `ch-5 spaces`, `groups of 3`, `dc or spaces`."""
    told = []
    for kind in of.split(" or "):
        head, joined, tail = kind.partition(" of ")
        ending = "" if head in _ALIKE else "es" if head.endswith("ch") else "s"
        told.append(f"{head}{ending}{joined}{tail}")
    return " or ".join(told)


def multiple_of(multiple: int, plus: int, of: str) -> str:
    """`a multiple of 10 plus 2 loops`, `any number of loops`."""
    if multiple == 1:
        return f"any number of {several(of)}"
    return f"a multiple of {multiple}{f' plus {plus}' if plus else ''} {several(of)}"


def in_words(rule: Rule) -> str:
    """A rule as a needleworker says it, its smallest number included where it is known."""
    if rule.exactly is not None:
        return _exactly(rule.exactly, rule.of)
    if rule.either:
        return _many(rule.either, rule.of, "or")
    if rule.multiple is None or rule.plus is None:
        return "no one multiple"
    told = multiple_of(rule.multiple, rule.plus, rule.of)
    return told if rule.least is None else f"{told}, at least {rule.least}"


def _exactly(n: int, of: str) -> str:
    return f"exactly {n} {of if n == 1 else several(of)}"


def _many(ways: Iterable[Series], of: str, last: str) -> str:
    told = [
        multiple_of(way.step, way.first % way.step, of) if way.step else _exactly(way.first, of)
        for way in ways
    ]
    return f"{', '.join(told[:-1])} {last} {told[-1]}" if len(told) > 1 else told[0]


# --- findings -----------------------------------------------------------------


def by_parts(round_: Round) -> Finding:
    """No one multiple: a round has clauses."""
    message = (
        f"round {round_.number} is worked part by part, so no one number of places makes the "
        "border close"
    )
    help_ = "see what each part needs, and give the edge itself to see whether it closes there"
    return Finding("no-one-multiple", message, help_, round_.head, round_.number)


def only_some(ways: tuple[Series, ...], of: str) -> Finding:
    """No one multiple: the border closes on several, or on single numbers."""
    message = (
        f"the border closes on {_many(ways, of, ' and on ')}, so there is no one multiple for it"
    )
    help_ = "to count for a number of your own, give it with --loops"
    if not any(way.step for way in ways):
        help_ = "for a border of any length, say which steps are repeated"
    return Finding("no-one-multiple", message, help_)


def unevenly(round_: Round, of: str) -> Finding:
    """No one multiple: none was found in what is tried."""
    message = (
        f"round {round_.number} comes round too unevenly, or too seldom, for a multiple of "
        f"{several(of)} to be found"
    )
    help_ = "give a number with --loops to see whether the border closes on it"
    return Finding("no-one-multiple", message, help_, round_.head, round_.number)


def too_many(round_: Round, of: str) -> Finding:
    """No one multiple: the rounds close together on too large numbers, if at all."""
    n = round_.number
    message = (
        f"the numbers of {several(of)} on which the rounds up to round {n} might close together "
        "are too large to try"
    )
    help_ = "see what each round needs, and give a number with --loops to see whether it closes"
    return Finding("no-one-multiple", message, help_, round_.head, n)


def never_closes(rule: Rule, round_: Round, of: str) -> Finding:
    """`rule`: what the round needs of what it works into."""
    n = round_.number
    which = (
        "round 1 close" if n == 1 else f"rounds 1 {'and' if n == 2 else 'to'} {n} close together"
    )
    message = f"no number of {several(of)} makes {which}"
    help_ = f"see what round {n} works into, and whether it goes on to the end"
    if rule.plus is not None or rule.exactly is not None or rule.either:
        before = "the edge" if n == 1 else f"round {n - 1}"
        wanted = in_words(replace(rule, least=None))
        message += f": round {n} needs {wanted}, and {before} never has that"
        help_ = f"change one of the rounds, or ease round {n} in where it will not be seen"
    return Finding("never-closes", message, help_, round_.head, n)


def does_not_agree(reading: Reading, whole: Rule) -> list[Finding]:
    """The heading `multiple of M plus A` against what the border needs."""
    claim = reading.multiple
    if claim is None or whole.multiple is None or whole.plus is None:
        return []
    if claim.multiple % whole.multiple == 0 == (claim.plus - whole.plus) % whole.multiple:
        return []
    said = multiple_of(claim.multiple, claim.plus, whole.of)
    message = f"the border says {said}, and its rounds close on {in_words(whole)}"
    help_ = "look for a misprint in the rows or in the heading"
    return [Finding("count-disagrees", message, help_, claim.span)]
