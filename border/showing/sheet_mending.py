"""The page of the sheet on putting right: what to count, and what to write in the project."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from msgspec import Struct

from border.reckoning.counts import RoundCount
from border.showing.counted import Piece
from border.showing.folding import everything
from border.showing.telling import harmless
from border.text.amounts import some


class ToCount(Struct, frozen=True):
    """What one round should come to: `what` is easily counted, `all_of` everything in it."""

    round: int
    what: str
    all_of: str


class EdgeMending(Struct, frozen=True):
    """The rounds of one edge, and an example with its own numbers: `said`, then `lines`."""

    name: str
    rounds: tuple[ToCount, ...]
    said: str
    lines: tuple[str, ...]


class Mending(Struct, frozen=True):
    """`steps`: what to do, in order; `closing`: what comes of it."""

    steps: tuple[str, ...]
    edges: tuple[EdgeMending, ...]
    closing: str


STEPS = (
    "At every joint, compare what you have made with the total of the sheet. While they "
    "agree, all is well up to there, and you can tick and put the work away.",
    "Where they do not agree, the slip lies between this joint and the last one that agreed. "
    "Count over that one motif again; if it is wrong, undo to the joint that was right.",
    "If you would rather leave it, finish the round and count what it came out at. The later "
    "rounds can be counted on from there.",
)


def mending(pieces: Sequence[Piece], file: str, project: bool) -> Mending:
    """How to put right what came out otherwise. `file`: the file that the sheet is made of."""
    edges = tuple(_edge(piece, project) for piece in pieces if piece.rounds)
    if project:
        closing = (
            f"Save {file} and make the sheet anew. Rounds up to the one that is done are shown "
            "as worked, and all later ones are counted on from what you found. Only the rounds "
            "that have become other ones lose their ticks."
        )
    else:
        closing = (
            "A border on its own keeps no record of what is worked. Put it in a project "
            "(border new makes one): there, done and found say what you have."
        )
    return Mending(STEPS, edges, closing)


def _edge(piece: Piece, project: bool) -> EdgeMending:
    rounds = tuple(_to_count(r, piece.terms) for r in piece.rounds)
    name = harmless(piece.edge.name)
    example = next((r for r in piece.rounds if r.spaces and not r.done), None)
    example = example or next((r for r in piece.rounds if not r.done), piece.rounds[-1])
    key, n = _countable(example)
    said = f"Count the {key} in the last round that you have worked. "
    said += f"Round {example.number} should have {n}."
    if not project:
        return EdgeMending(name, rounds, said, ())
    said += f" If it has {n + 1}, write, in the project, under the [[work]] of {name}, "
    said += "below its border:"
    return EdgeMending(name, rounds, said, tuple(_lines(example.number, key, n + 1)))


def _lines(number: int, key: str, n: int) -> Iterator[str]:
    yield f"done = {number}"
    yield f"found = {{ round = {number}, {key} = {n} }}"


def _countable(count: RoundCount) -> tuple[str, int]:
    """What is most easily counted of a round: its spaces, else its stitches."""
    if count.spaces:
        return "spaces", count.spaces
    return "stitches", sum(count.made.stitches.values())


def _to_count(count: RoundCount, terms: str) -> ToCount:
    key, n = _countable(count)
    what = some(n, "space" if key == "spaces" else "stitch")
    return ToCount(count.number, what, everything(count.made, terms))
