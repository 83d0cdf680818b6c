"""How fine a thread is: size numbers, tex, den, Nm and Ne, all as tex.

tex (grams in 1000 m) and den (grams in 9000 m) grow with the thread, Nm (metres in a
gram) and Ne (hanks of 840 yards in a pound) shrink: ISO 1144 and ISO 2060. A size number
on a ball is none of these: what it means is the maker's affair.
"""

from __future__ import annotations

from msgspec import Struct

from border.findings import Finding, Span

POUND_G = 453.59237
HANK_M = 840 * 0.9144
"""A hank of cotton: 840 yards."""

MAKERS_DIFFER = 0.10
"""How far threads of one size number lie apart, either way ("10 % and more": common practice)."""

_MEASURED: dict[str, int] = {
    "10": 184,
    "20": 129,
    "30": 102,
    "40": 91,
    "50": 87,
    "60": 66,
    "80": 54,
    "100": 51,
}
"""Size numbers of crochet cotton to tex, from a table of measured threads
(tattingcorner.com)."""

_SEEN_ON_BALLS: dict[str, int] = {"10": 225, "80": 60}
"""Thicker than that table by more than a tenth: what balls of some makers weigh by their
length (from memory)."""


class Fineness(Struct, frozen=True):
    """The tex of a thread, and between what it may lie; all three the same where it is stated."""

    tex: float
    low: float
    high: float

    @property
    def exact(self) -> bool:
        return self.low == self.high


def stated(tex: float) -> Fineness:
    """A thread whose tex somebody has measured or reckoned."""
    return Fineness(tex, tex, tex)


def _size(number: str) -> Fineness:
    tex = _MEASURED[number]
    low, high = (round(tex * (1 + by)) for by in (-MAKERS_DIFFER, MAKERS_DIFFER))
    return Fineness(tex, low, max(high, _SEEN_ON_BALLS.get(number, 0)))


SIZES: dict[str, Fineness] = {number: _size(number) for number in _MEASURED}
"""What the size numbers of crochet cotton come to, coarse ones first."""


def tex_of_den(den: float) -> float:
    """tex of a thread of so many denier (grams in 9000 m)."""
    return den / 9


def tex_of_nm(nm: float) -> float:
    """tex of a thread of the metric count Nm (metres in a gram)."""
    return 1000 / nm


def tex_of_ne(ne: float) -> float:
    """tex of a thread of the English cotton count Ne (hanks of 840 yards in a pound)."""
    return 1000 * POUND_G / (HANK_M * ne)


def bare_size(size: str) -> str:
    """`40` of `No. 40`."""
    return size.strip().lower().removeprefix("no").lstrip(". ").strip()


def of_size(size: str, span: Span | None = None) -> tuple[Fineness | None, tuple[Finding, ...]]:
    """What a size number (`40`, `No. 40`) comes to, or the finding `bad-value`."""
    if (number := bare_size(size)) in SIZES:
        return SIZES[number], ()
    return None, (
        Finding(
            "bad-value",
            f'size "{size}" is not in the table of measured threads',
            f"the sizes known are {', '.join(SIZES)}; for another thread write, in place of "
            "size, tex = N, the grams that 1000 m of it weigh, or the ball's ball_g and ball_m",
            span,
        ),
    )
