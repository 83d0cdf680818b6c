"""Which word a number goes with: `2 dc, ch 3`, `dc 2 ch 3`, `1 tr 2 ch`."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

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
        bound = _bound(run[head:])
        if bound is not None:
            nouns, unclear = bound
            kept = list(run[:head])
            if kept and kept[-1].type == "NUM" and head < len(run):
                # `skip 3 ch 2`: the skip ends at its number.
                kept.append(replace(kept[-1], type="SEP", name="", text=""))
            return kept + _ordered(run[head:], nouns), [run[head + n] for n in unclear]
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


def _bound(run: Sequence[Terminal]) -> tuple[dict[int, int], list[int]] | None:
    """Word -> its number, as places in the run, and the first number that could go two ways.

    None where some number finds no word. From the end of the run it is known
    of every number whether the rest can be settled once it has gone right or
    left, so that one walk from the head settles all.
    """
    numbers = [n for n, terminal in enumerate(run) if terminal.type == "NUM"]
    right = [n + 1 < len(run) and run[n + 1].type != "NUM" for n in numbers]
    left = [n > 0 and run[n - 1].type in _COUNT_BEHIND for n in numbers]
    for i in reversed(range(len(numbers) - 1)):
        after_right = right[i + 1] or (left[i + 1] and numbers[i + 1] - 1 != numbers[i] + 1)
        after_left = right[i + 1] or left[i + 1]
        right[i] = right[i] and after_right
        left[i] = left[i] and after_left
    nouns: dict[int, int] = {}
    unclear: list[int] = []
    for n, to_right, to_left in zip(numbers, right, left, strict=True):
        to_left = to_left and n - 1 not in nouns
        if not to_right and not to_left:
            return None
        if to_right and to_left and not unclear:
            unclear.append(n)
        nouns[n + 1 if to_right else n - 1] = n
    return nouns, unclear


def _ordered(run: Sequence[Terminal], nouns: dict[int, int]) -> list[Terminal]:
    found: list[Terminal] = []
    for n, terminal in enumerate(run):
        if terminal.type != "NUM":
            found += [run[nouns[n]]] if n in nouns else []
            found.append(terminal)
    return found
