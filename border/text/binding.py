"""Which word a number goes with: `2 dc, ch 3`, `dc 2 ch 3`, `1 tr 2 ch`."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from border.text.terminals import Terminal

_COUNTED = frozenset({"STITCH", "CH", "PICOT", "CLUSTER"})
_COUNT_BEHIND = frozenset({"STITCH", "CH"})
_PLACE_OPENS = frozenset(
    {"NEXT", "THE", "EACH", "EACHOF", "EVERY", "SAME", "SKIPPED", "ORD", "CENTRE", "OF", "OR"}
    | {"BETWEEN", "PREP", "ALLIN", "AS", "TOLAST", "SKIP", "PAIR"}
)


def bind_numbers(terminals: Sequence[Terminal]) -> tuple[list[Terminal], list[Terminal]]:
    """The terminals with every number before its word, and the numbers that could go two ways.

    Inside a run without separators each number goes with a neighbour, each word
    takes one at most; what fits only one way is settled (`dc 2 ch 3`), and
    what fits two goes to the right.
    """
    found: list[Terminal] = []
    unclear: list[Terminal] = []
    at = 0
    while at < len(terminals):
        end = at
        while end < len(terminals) and terminals[end].type in _COUNTED | {"NUM"}:
            end += 1
        if end == at:
            found.append(terminals[at])
            at += 1
            continue
        before = terminals[at - 1].type if at else ""
        bound, doubtful = _bind_run(terminals[at:end], before)
        found += bound
        unclear += doubtful
        at = end
    return found, unclear


def _bind_run(run: Sequence[Terminal], before: str) -> tuple[list[Terminal], list[Terminal]]:
    """A run with its numbers in front; the head of it may belong to a place or a skip."""
    for head in _heads(run, before):
        ways = _ways(run[head:])
        if ways:
            kept = list(run[:head])
            if kept and kept[-1].type == "NUM" and head < len(run):
                # `skip 3 ch 2`: the skip ends at its number.
                kept.append(replace(kept[-1], type="SEP", name="", text=""))
            doubtful = [run[head:][n] for n in _differing(ways)]
            return kept + _ordered(run[head:], ways[0]), doubtful
    return list(run), []


def _heads(run: Sequence[Terminal], before: str) -> list[int]:
    """How much of a run's head may belong to the place or skip before it."""
    if before not in _PLACE_OPENS:
        return [0]
    number = run[0].type == "NUM"
    heads = []
    if len(run) > number and run[number].type != "NUM":
        heads.append(number + 1)
    if number and before == "SKIP":
        heads.append(1)
    return heads


def _ways(run: Sequence[Terminal]) -> list[tuple[int, ...]]:
    """The ways to give every number a neighbour, as the word of each; to the right first.

    Two ways that end alike go on alike: two of each ending are enough to tell
    whether there is more than one.
    """
    ways: list[tuple[int, ...]] = [()]
    for n, terminal in enumerate(run):
        if terminal.type != "NUM":
            continue
        rights: list[tuple[int, ...]] = []
        lefts: list[tuple[int, ...]] = []
        for way in ways:
            if n + 1 < len(run) and run[n + 1].type != "NUM":
                rights.append((*way, n + 1))
            if n > 0 and run[n - 1].type in _COUNT_BEHIND and n - 1 not in way[-1:]:
                lefts.append((*way, n - 1))
        ways = rights[:2] + lefts[:2]
    return ways


def _differing(ways: Sequence[tuple[int, ...]]) -> list[int]:
    if len(ways) < 2:
        return []
    return [min(a, b) + 1 for a, b in zip(ways[0], ways[1], strict=True) if a != b][:1]


def _ordered(run: Sequence[Terminal], way: tuple[int, ...]) -> list[Terminal]:
    numbers = [terminal for terminal in run if terminal.type == "NUM"]
    by_noun = dict(zip(way, numbers, strict=True))
    found: list[Terminal] = []
    for n, terminal in enumerate(run):
        if terminal.type == "NUM":
            continue
        if n in by_noun:
            found.append(by_noun[n])
        found.append(terminal)
    return found
