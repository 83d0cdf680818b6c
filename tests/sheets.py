"""For tests of the sheet: projects kept in memory, their sheets, and pages taken apart."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any, NamedTuple

import html5lib

from border.findings import Finding
from border.pipeline import Pipeline
from border.showing.counted import Counted
from border.showing.sheet import Sheet, sheet
from border.showing.sheet_html import sheet_html
from border.text.source import Source
from border.wanted import AskedEdge, is_project

Files = dict[str, str]
Element = Any
"""An element of a page, as html5lib gives it (without namespaces)."""

PATTERNS = Path(__file__).parent.parent / "patterns"
FERN: Files = {p.name: p.read_text("utf-8") for p in PATTERNS.iterdir()}

LACE = """\
border: Lace
terms: us
round 1: *1 sc in next loop, ch 3; repeat from *.
round 2: *5 dc in next space, 1 sc in next space; repeat from *.
round 3: *1 sc in centre of next group of 5, ch 7; repeat from *.
"""

CUFF = """\
format = 1
name = "Cuff"
[[edge]]
name = "cuff"
runs = [{ section = "cuff", motifs = 6, places = 4 }]
[[work]]
edge = "cuff"
border = "lace.border"
"""


def pipeline_of(files: Files, name: str, loops: int | None = None) -> Pipeline:
    def read(file: str) -> Source | Finding:
        if file in files:
            return Source(file, files[file])
        return Finding("file-unreadable", f"{file} cannot be read", "")

    return Pipeline(name, read, AskedEdge(loops))


def counted_of(files: Files, name: str, loops: int | None = None) -> Counted:
    return pipeline_of(files, name, loops).counted


def sheet_of(files: Files, name: str, loops: int | None = None) -> Sheet:
    return made_of(pipeline_of(files, name, loops))


def made_of(pipeline: Pipeline) -> Sheet:
    """The sheet of a pipeline."""
    return sheet(pipeline.counted, pipeline.tape, pipeline.name, is_project(pipeline.name))


def page_of(files: Files, name: str, loops: int | None = None) -> str:
    pipeline = pipeline_of(files, name, loops)
    return sheet_html(made_of(pipeline), pipeline.sheet_pictures)


def cuff(said: str = "", lace: str = LACE, name: str = "Cuff") -> Files:
    """A project of one cuff; `said` is added to its work."""
    title = name.replace("\\", "\\\\").replace('"', '\\"')
    project = CUFF.replace('name = "Cuff"', f'name = "{title}"', 1)
    return {"cuff.toml": project + said, "lace.border": lace}


# --- a page taken apart -----------------------------------------------------------


class Passed(NamedTuple):
    """A box as the page has it: what over, what is made, the joint, so far, on the joint."""

    what: str
    made: dict[str, int]
    joint: tuple[str, ...]
    so_far: dict[str, int]
    on: dict[str, int]


def parsed(page: str) -> Element:
    """The page as a tree. Anything that is not valid HTML by the parser's rules is an error."""
    return html5lib.HTMLParser(strict=True, namespaceHTMLElements=False).parse(page)


def classed(within: Element, name: str) -> list[Element]:
    return [e for e in within.iter() if name in str(e.get("class", "")).split()]


def words(element: Element) -> str:
    return " ".join("".join(element.itertext()).split())


def amounts(text: str, of: str = "us") -> dict[str, int]:
    """`4 sc, 15 ch, 1 picot` as numbers, stitches by canonical name."""
    uk = {"dc": "sc", "htr": "hdc", "tr": "dc", "dtr": "tr", "trtr": "dtr"}
    found = {}
    for n, kind in re.findall(r"(\d+) ([a-z ]+)", text):
        kind = kind.strip().removesuffix("s") if kind.startswith("picot") else kind.strip()
        found[uk.get(kind, kind) if of == "uk" else kind] = int(n)
    return found


def passed(round_: Element, terms: str = "us") -> list[Passed]:
    """The boxes of a round, run by run."""
    made: dict[str, int] = {}
    boxes = []
    for element in round_.iter():
        if "run" in str(element.get("class", "")).split():
            made = amounts(words(classed(element, "made")[0]), terms)
        if element.tag != "li":
            continue
        own, joint = classed(element, "made"), classed(element, "joint")
        on = classed(element, "on")
        boxes.append(
            Passed(
                words(classed(element, "what")[0]),
                amounts(words(own[0]), terms) if own else made,
                tuple(words(joint[0]).split(" | ")) if joint else (),
                amounts(words(classed(element, "sum")[0]), terms),
                amounts(words(on[0]), terms) if on else {},
            )
        )
    return boxes
