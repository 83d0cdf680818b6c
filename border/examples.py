"""Examples of every command, as its `--help` shows them; a test runs them all."""

from __future__ import annotations

EXAMPLES: dict[str, tuple[tuple[str, str], ...]] = {
    "new": (
        ("border new cuff", "asks what it has to know, and makes the folder cuff"),
        ("border new collar --shape collar --wheels 24", "asks only for the rest"),
        ("border new band --shape strip --usual", "asks nothing"),
    ),
    "check": (
        ("border check cuff/cuff.toml", "the project, with the borders in it"),
        ("border check shells.border", "a text alone, without an edge"),
    ),
    "count": (
        ("border count cuff/cuff.toml", "every edge of the project"),
        ("border count cuff/cuff.toml --work wrist", "one edge of it"),
        ("border count shells.border --loops 78", "a round of 78 loops"),
        ("border count shells.border --runs 6,6,3,3", "four wheels, motif by motif"),
        ("border count shells.border --loops 79 --open", "a flat edge, to and fro"),
    ),
    "close": (
        ("border close shells.border", "the rule, without an edge"),
        ("border close shells.border --loops 80", "and what is left over on 80 loops"),
        ("border close borders/ cuff/cuff.toml", "which border of a folder will do"),
    ),
    "adjust": (
        ("border adjust cuff/cuff.toml", "the best plan for every edge"),
        ("border adjust cuff/cuff.toml --all 5", "the five best, and what each pays for"),
        ("border adjust cuff/cuff.toml --write", "puts the plan into the project"),
    ),
    "thread": (
        ("border thread cuff/cuff.toml", "round by round"),
        ("border thread cuff/cuff.toml --balls 2", "how far two balls go"),
    ),
    "sheet": (
        ("border sheet cuff/cuff.toml > cuff.html", "a page for the browser, and for paper"),
        ("border sheet cuff/cuff.toml --text", "the same in the terminal"),
    ),
    "write": (
        ("border write cuff/cuff.toml", "in the terms of the border"),
        ("border write cuff/cuff.toml --terms uk", "in UK terms"),
    ),
    "flat": (("border flat fern.toml", "what the tape should say of every round"),),
    "attach": (("border attach fern.toml", "where the pins go, and how many stitches"),),
    "size": (
        ("border size fern.toml --edge neck --length 24cm", "the wheels for 24 cm"),
        ("border size fern.toml --more front=1,back=1", "what two wheels more do"),
    ),
    "yoke": (
        ("border yoke fern.toml", "the sums of every wheel, and the edges"),
        ("border yoke fern.toml --svg > yoke.svg", "a picture, for the browser"),
    ),
    "chart": (
        ("border chart cuff/cuff.toml > cuff.svg", "a picture, for the browser"),
        ("border chart shells.border --loops 78 > shells.svg", "a border text alone"),
    ),
    "schema": (("border schema > border.json", "for those who write programs"),),
}
"""Command -> lines to type, and what comes of each."""


def told(command: str) -> str:
    """The examples of one command, as they stand below its `--help`."""
    return "\n".join(("examples:", *_side_by_side(EXAMPLES[command])))


def first_of_each() -> str:
    """One example of every command, as they stand below `border --help`."""
    lines = "\n".join(f"  {of_one[0][0]}" for of_one in EXAMPLES.values())
    return f"examples:\n{lines}\n\nmore of each command, with its options: border count --help"


def _side_by_side(examples: tuple[tuple[str, str], ...]) -> list[str]:
    """What is typed, and behind it what comes; below it, where 80 columns are too few."""
    wide = max(len(typed) for typed, _ in examples)
    if all(wide + 4 + len(comes) <= 80 for _, comes in examples):
        return [f"  {typed:{wide}}  {comes}" for typed, comes in examples]
    return [line for typed, comes in examples for line in (f"  {typed}", f"      {comes}")]
