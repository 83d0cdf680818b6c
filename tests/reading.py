"""Border texts read in one word, for the tests of the text floor."""

from __future__ import annotations

from border.findings import Finding
from border.text.source import Source
from border.text.syntax import read_border
from border.text.tree import (
    ST,
    Border,
    Item,
    Kind,
    Place,
    Row,
    Stitches,
    Target,
    Text,
    Which,
    Whole,
)
from border.text.written import write_border

SPACE = Kind("space")
LOOP = Kind("loop")
QUESTIONS = {
    "place-assumed",
    "perhaps-instead",
    "perhaps-one-place",
    "perhaps-counted-on",
    "perhaps-picot",
    "perhaps-last-of-each",
    "perhaps-as-they-come",
    "perhaps-leads-on",
    "perhaps-fewer",
    "perhaps-missed",
    "perhaps-nothing-missed",
    "perhaps-of-bracket",
    "perhaps-of-spaces",
    "perhaps-start-chain",
    "perhaps-just-made",
    "perhaps-shared",
}
"""Asked of a text that is read all the same."""

BLOCK = Kind("block")
CH = Kind("ch")
DC = Kind("dc")
NEXT_ST = Place(Which.NEXT, (Whole(ST),))
NEXT_SPACE = Place(Which.NEXT, (Whole(SPACE),))
EACH_ST = Place(Which.EACH, (Whole(ST),))


def place(which: Which, *targets: Target, count: int = 1, each: bool = False) -> Place:
    """A place of the tree."""
    return Place(which, targets, count, each)


def dc(count: int, where: Place | None = None) -> Stitches:
    """So many dc."""
    return Stitches(count, "dc", where)


def read(text: str) -> tuple[Border, tuple[Finding, ...]]:
    """A border and the findings of a text that has rows."""
    border, findings = read_border(Source("test.border", text))
    assert border is not None
    return border, findings


def read_rows(text: str, terms: str = "us") -> tuple[Row, ...]:
    """The rows of a text without faults."""
    border, findings = read(f"terms: {terms}\n{text}")
    assert not findings, [(f.code, f.message) for f in findings]
    return border.rows


def read_text(steps: str, terms: str = "us", headings: str = "") -> Text:
    """The text of `round 1: steps`, without faults."""
    (row,) = read_rows(f"{headings}\nround 1: {steps}", terms)
    assert isinstance(row.body, Text)
    return row.body


def read_items(steps: str, terms: str = "us", headings: str = "") -> tuple[Item, ...]:
    """The steps of a row that is one text without faults."""
    text = read_text(steps, terms, headings)
    assert not text.repeats
    assert not text.ends
    return text.items


def faults(text: str) -> list[tuple[str, str]]:
    """(code, the stretch of the text pointed at) of every finding."""
    _, findings = read_border(Source("test.border", text))
    return [(f.code, text[f.span.start : f.span.end] if f.span else "") for f in findings]


def row_faults(steps: str, headings: str = "terms: us") -> list[tuple[str, str]]:
    """The faults of `round 1: steps`."""
    return faults(f"{headings}\nround 1: {steps}\n")


def written(steps: str, terms: str = "us", headings: str = "") -> str:
    """`round 1: steps` as it is read without faults, in US words and on one line."""
    border, findings = read(f"terms: {terms}\n{headings}\nround 1: {steps}\n")
    assert not findings, [(f.code, f.message) for f in findings]
    text = write_border(border, "us")
    return " ".join(text[text.index("round 1: ") + len("round 1: ") :].split()).rstrip(".")


def asked(steps: str, terms: str = "us", headings: str = "") -> dict[str, str]:
    """What is told of `round 1: steps`: by its code, what to do."""
    _, findings = read(f"terms: {terms}\n{headings}\nround 1: {steps}\n")
    return {f.code: f.help or "" for f in findings}
