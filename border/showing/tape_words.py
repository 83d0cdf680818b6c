"""The measuring line in words: what a tape should say after a round, and what it means if not."""

from __future__ import annotations

from border.reckoning.measuring import Mark
from border.reckoning.stitch_sizes import Band
from border.showing.lengths import between
from border.showing.telling import harmless
from border.text.amounts import some


def tape_in_words(mark: Mark, edge: str) -> str:
    """`10 spaces should measure 12 to 13 cm`, with what they do measure, where that is said."""
    told = f"{some(mark.count, mark.of)} should measure {between(mark.expected)}"
    if mark.measured is None:
        return told
    return f"{told}; yours measure {mark.measured:g} mm: {_comes_out(mark, harmless(edge))}"


def _comes_out(mark: Mark, edge: str) -> str:
    if mark.as_reckoned:
        return "as reckoned"
    low, high = sorted((abs(mark.longer.low), abs(mark.longer.high)))
    longer = "longer" if mark.longer.low > 0 else "shorter"
    return (
        f"the {edge} comes out {between(Band(low, high))} {longer}, and the rounds to come with it"
    )
