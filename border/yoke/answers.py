"""What someone is asked who writes a yoke down, and which of her answers can be.

An answer is read in the light of those before it: a sum that cannot be is refused, and shown.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from typing import TypeAlias

from msgspec import Struct

Value: TypeAlias = str | tuple[int, ...]
"""An answer: a word, or numbers; no numbers are a thing left open."""

Said: TypeAlias = Mapping[str, Value]
"""The answers up to now, by the keys of their questions."""


class Refused(Struct, frozen=True):
    """Why an answer cannot be, with its sum, and what can."""

    message: str
    help: str


def number(said: Said, key: str) -> int:
    """The answer to a question for one number."""
    return numbers(said, key)[0]


def numbers(said: Said, key: str) -> tuple[int, ...]:
    """The answer to a question for numbers."""
    value = said[key]
    assert isinstance(value, tuple)
    return value


def word(said: Said, key: str) -> str:
    """The answer to a question for a word."""
    value = said[key]
    assert isinstance(value, str)
    return value


class Question(Struct, frozen=True):
    """One thing to be said: `ask` in words, and what it usually is after what was said before."""

    key: str
    ask: str
    usual: Callable[[Said], Value]

    @property
    def option(self) -> str:
        """How it is said on the command line."""
        return f"--{self.key.replace('_', '-')}"

    def read(self, text: str, said: Said) -> Value | Refused:
        """The answer that a text is, or why it cannot be one."""
        raise NotImplementedError


class Choice(Question, frozen=True):
    """A question for one of a few words."""

    of: tuple[str, ...]

    def read(self, text: str, said: Said) -> str | Refused:
        given = text.strip().casefold()
        if given in self.of:
            return given
        return Refused(f'"{text}" is none of {", ".join(self.of)}', f"as in {self.of[0]}")


class Number(Question, frozen=True):
    """A question for a whole number.

    `most`: by what was said; `why`: what is wrong with a number above it, with the sum.
    """

    least: int
    most: Callable[[Said], int]
    why: Callable[[Said, int], str]

    def read(self, text: str, said: Said) -> tuple[int, ...] | Refused:
        found = _numbers(text)
        if found is None or len(found) != 1:
            return Refused(f'"{text}" is no whole number', f"as in {written(self.usual(said))}")
        most = self.most(said)
        can = f"give from {self.least} to {most}" if most > self.least else f"give {most}"
        if found[0] < self.least:
            return Refused(f"{found[0]} is too few", can)
        if found[0] > most:
            return Refused(self.why(said, found[0]), can)
        return found


class Measure(Question, frozen=True):
    """A question for a length of at most so many mm, which may be left open (an empty word).

    `what`: it is the measure of.
    """

    what: str
    most: int

    def read(self, text: str, said: Said) -> str | Refused:
        """The length in mm, as it stands in a project: `42`, `15.5`."""
        if not text.strip():
            return ""
        found = re.fullmatch(r"([0-9]{1,6}(?:[.,][0-9]{1,3})?)\s*(mm|cm)?", text.strip())
        if found is None:
            return Refused(
                f'"{text}" is no length', "give mm, as in 42 or 15.5, or cm, as in 4.2cm"
            )
        mm = float(found[1].replace(",", ".")) * (10 if found[2] == "cm" else 1)
        if not 1 <= mm <= self.most:
            size = "small" if mm < 1 else "large"
            return Refused(
                f"{mm:g} mm is too {size} for a {self.what}", f"from 1 to {self.most} mm"
            )
        return f"{mm:g}"


class FreeLoops(Question, frozen=True):
    """A question for the free loops of one kind of wheel: at each of its sides, round the wheel.

    Between any two sides lies a joint, so together they are what the joints leave of the
    wheel; the last may be left out. `needed`: sides where, without seam loops, some must be
    free, since nothing could be worked there else.
    """

    sides: tuple[str, ...]
    needed: tuple[str, ...] = ()

    def read(self, text: str, said: Said) -> tuple[int, ...] | Refused:
        found = _numbers(text)
        sides, usual = self.sides, written(self.usual(said))
        if found is None or len(found) not in (len(sides) - 1, len(sides)):
            wanted = f"{len(sides)} whole numbers, for {', '.join(sides)}"
            return Refused(f'"{text}" is not {wanted}', f"as in {usual}")
        left = self.left(said) - sum(found[: len(sides) - 1])
        if len(found) < len(sides) and left >= 0:
            found = (*found, left)
        loops = number(said, "loops")
        if far := self._sum(found, said) - loops:
            which = f"{far} too many" if far > 0 else f"{-far} too few"
            message = f"{self.shown(found, said)}, {which} for a wheel of {loops} loops"
            return Refused(message, self._mended(found, left, said))
        seams = number(said, "seam")
        for side, free in zip(sides, found, strict=True):
            if not free and not seams and side in self.needed:
                message = f"no loop is left at the {side}, so that nothing could be worked there"
                return Refused(message, "give it one at least")
        return found

    def left(self, said: Said) -> int:
        """The loops of a wheel that its joints leave free."""
        return number(said, "loops") - len(self.sides) * number(said, "joined")

    def shown(self, free: tuple[int, ...], said: Said) -> str:
        """The sum in words: `neck 5 + joint 3 + hem 5 + joint 3 = 16`."""
        joint = f"joint {number(said, 'joined')}"
        named = [f"{side} {n}" for side, n in zip(self.sides, free, strict=False)]
        terms = [term for one in named for term in (one, joint)]
        terms += [joint] * (len(self.sides) - len(named))
        return f"{' + '.join(terms)} = {self._sum(free, said)}"

    def _sum(self, free: tuple[int, ...], said: Said) -> int:
        return sum(free) + len(self.sides) * number(said, "joined")

    def _mended(self, free: tuple[int, ...], left: int, said: Said) -> str:
        if left < 0:
            return f"its joints leave {self.left(said)} free in all"
        *before, last = (f"{side} {n}" for side, n in zip(self.sides, free, strict=True))
        return f"with {' and '.join(before)} it is {last.rpartition(' ')[0]} {left}"


def written(value: Value) -> str:
    """An answer as it is typed: `collar`, `16`, `4,6`; nothing where it was left open."""
    return value if isinstance(value, str) else ",".join(map(str, value))


def _numbers(text: str) -> tuple[int, ...] | None:
    """The whole numbers of a text, by commas or spaces; None where it is anything else."""
    parts = [part for part in re.split(r"[\s,]+", text) if part]
    if not parts or not all(re.fullmatch(r"[0-9]{1,7}", part) for part in parts):
        return None
    return tuple(int(part) for part in parts)
