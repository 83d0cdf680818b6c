"""Numbers that come round evenly: `first`, `first + step` …, and what several come to."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import gcd, lcm

from msgspec import Struct

MOST_CLASSES = 100_000
"""Remainders that are looked through when series are put together."""


class Series(Struct, frozen=True):
    """The numbers `first`, `first + step` …; with `step` 0, `first` alone."""

    step: int
    first: int

    def at(self, t: int) -> int:
        return self.first + self.step * t

    def nearest(self, n: int) -> tuple[int, ...]:
        """The members nearest to n, below and above it; n itself where it is one."""
        if self.step == 0 or n <= self.first:
            return (self.first,)
        below = n - (n - self.first) % self.step
        return (below,) if below == n else (below, below + self.step)

    def holds(self, n: int) -> bool:
        return n in self.nearest(n)


def solved(m: int, a: int, modulus: int) -> Series | None:
    """The numbers x from 0 up with m·x + a a multiple of `modulus`; None where there are none."""
    g = gcd(m, modulus)
    if a % g:
        return None
    step = modulus // g
    return Series(step, -a // g * pow(m // g, -1, step) % step)


def as_one(several: Sequence[Series]) -> Series | None:
    """The one series that unending series come to, put together; None where it takes several.

    It begins where all of them have begun.
    """
    several = [s for s in several if s.step]
    if not several:
        return None
    whole = lcm(*(s.step for s in several))
    if sum(whole // s.step for s in several) > MOST_CLASSES:
        return None
    found = {x for s in several for x in range(s.first % s.step, whole, s.step)}
    step, uneven = divmod(whole, len(found))
    if uneven or len({x % step for x in found}) > 1:
        return None
    begun = max(s.first for s in several)
    return Series(step, begun + (min(found) - begun) % step)


def apart(several: Iterable[Series]) -> tuple[Series, ...]:
    """Series by their steps and what is over them, those left out that lie within another."""
    kept: list[Series] = []
    for one in sorted(set(several), key=_order):
        within = (
            k.step and one.step % k.step == 0 and (one.first - k.first) % k.step == 0 for k in kept
        )
        if not any(within):
            kept.append(one)
    return tuple(kept)


def _order(one: Series) -> tuple[bool, int, int, int]:
    return one.step == 0, one.step, one.first % one.step if one.step else 0, one.first
