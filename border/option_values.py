"""What may stand behind an option: each is read from its text, or refused in plain words.

All raise argparse.ArgumentTypeError, which the parser tells with the name of the option.
"""

from __future__ import annotations

import argparse
import re

TERMS = ("us", "uk", "early")
SHELLS = ("bash", "zsh", "fish")
MOST_PLACES = 1_000_000
MOST_PLANS = 100
MOST_MM = 1_000_000


def amount(text: str) -> float:
    """A number of balls, perhaps in parts of one."""
    if not re.fullmatch(r"[0-9]{1,4}(\.[0-9]{1,3})?", text) or not float(text):
        raise argparse.ArgumentTypeError(f'"{text}" is no number of balls, as in 2 or 1.5')
    return float(text)


def few(text: str) -> int:
    """A number of plans."""
    if not re.fullmatch(r"[0-9]{1,3}", text) or not 1 <= int(text) <= MOST_PLANS:
        raise argparse.ArgumentTypeError(f'"{text}" is no number of plans from 1 to {MOST_PLANS}')
    return int(text)


def shell(text: str) -> str:
    """A shell whose words can be completed."""
    if text not in SHELLS:
        raise argparse.ArgumentTypeError(f'"{text}" is no shell: give {", ".join(SHELLS)}')
    return text


def terms(text: str) -> str:
    """The names by which stitches go."""
    if text not in TERMS:
        raise argparse.ArgumentTypeError(f'"{text}" names no terms: give {", ".join(TERMS)}')
    return text


def length(text: str) -> float:
    """A length in mm, from mm or cm."""
    found = re.fullmatch(r"\s*([0-9]{1,6}(?:\.[0-9]{1,3})?)\s*(mm|cm)?\s*", text)
    mm = float(found[1]) * (10 if found[2] == "cm" else 1) if found else 0.0
    if not 0 < mm <= MOST_MM:
        raise argparse.ArgumentTypeError(f'"{text}" is no length: give mm, as in 820, or 82cm')
    return mm


def more(text: str) -> tuple[tuple[str, int], ...]:
    """Wheels more (or fewer, below 0) by the section that they go into."""
    parts = [re.fullmatch(r"\s*(.+?)\s*=\s*([+-]?[0-9]{1,4})\s*", part) for part in text.split(",")]
    found = {part[1]: int(part[2]) for part in parts if part}
    if len(found) < len(parts) or not any(found.values()):
        raise argparse.ArgumentTypeError(
            f'"{text}" does not say how many wheels more: as in front=1,back=1'
        )
    return tuple(found.items())


def number(text: str) -> int:
    """A number of loops."""
    if not re.fullmatch(r"[0-9]{1,9}", text) or not 1 <= int(text) <= MOST_PLACES:
        raise argparse.ArgumentTypeError(
            f'"{text}" is no number of loops: give a whole number from 1 to {MOST_PLACES}'
        )
    return int(text)


def runs(text: str) -> tuple[int, ...]:
    """The free loops of each motif, in order."""
    parts = [part.strip() for part in text.split(",")]
    if not all(re.fullmatch(r"[0-9]{1,9}", part) for part in parts):
        raise argparse.ArgumentTypeError(
            f'"{text}" is no list of runs: give the loops of each motif, as in 6,6,3,3'
        )
    runs = tuple(int(part) for part in parts)
    if not 1 <= sum(runs) <= MOST_PLACES:
        raise argparse.ArgumentTypeError(f"give from 1 to {MOST_PLACES} loops in all")
    return runs
