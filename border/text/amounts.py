"""Numbers with their nouns, stitches by the names of the terms: `2 groups of 3`, `1 tr`."""

from __future__ import annotations

import re
from collections.abc import Mapping

from border.stitches import STITCHES
from border.text.tree import Kind
from border.text.written_places import write_kind

_STITCH = re.compile(rf"\b({'|'.join(sorted(STITCHES, key=len, reverse=True))})\b")


def some(n: int, word: str) -> str:
    """A number with its noun: `1 space`, `2 stitches`, `3 st`, `2 groups of 3`."""
    head, of, tail = word.partition(" of ")
    if n == 1 or head in STITCHES or head in ("st", "ch"):
        return f"{n} {word}"
    return f"{n} {head}{'es' if head.endswith('ch') else 's'}{of}{tail}"


def often(times: int) -> str:
    """`once`, `12 times`."""
    return "once" if times == 1 else f"{times} times"


def in_terms(kind: str, terms: str) -> str:
    """A kind of site or stitch with its canonical stitch names put in other terms."""
    return _STITCH.sub(lambda m: write_kind(Kind(m[1]), terms, False), kind)


def kinds(amounts: Mapping[str, int], terms: str) -> str:
    """`2 spaces, 1 group`: sites or stitches by kind."""
    return ", ".join(in_terms(some(n, kind), terms) for kind, n in amounts.items())
