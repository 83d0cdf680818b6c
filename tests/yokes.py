"""For the tests of the yoke floor: project texts read and traced."""

from __future__ import annotations

from pathlib import Path

from border.findings import Finding
from border.text.source import Source
from border.yoke.edges import Edge, trace
from border.yoke.project import Project, read_project
from border.yoke.report import YokeReport

FERN = (Path(__file__).parent.parent / "patterns" / "fern.toml").read_text("utf-8")

EVERYTHING = """
format = 1
name = "Fern yoke"
hand = "left"

[yoke]
loops = 16
of = "picot"
joined = 3
seam_loops = 1
motif_mm = 42

[[strip]]
name = "front"
motifs = 5
sides = ["neck 5", "hem 5"]

[[strip]]
name = "left strap"
motifs = 3
sides = ["neck 3", "left armhole 7"]
from = "front.1"
to = "back.5"

[[motif]]
name = "front.1"
ring = ["neck 2", "join front.2", "hem 5", "join left underarm.1",
        "left armhole 0", "join left strap.1 by 2"]     # another number

[[motif]]
name = "right underarm.1"
mirror_of = "left underarm.1"

[[label]]
name = "underarm"
motifs = ["left underarm.2", "right underarm.2"]

[[edge]]
name = "cuff"
closed = false
runs = [{ section = "cuff", motifs = 7, places = 6 }, { section = "cuff", places = 5 }]

[[edge]]
name = "pocket"
places = 90
of = "stitch"

[[work]]
edge = "neck"
border = "fern.border"
start = "front.1"
mirror = ["front.3", "back.3"]
done = 3
found = { round = 3, spaces = 71 }

[[work.adjust]]
round = 5
at = "left strap"
by = 1

[[work.adjust]]
round = 6
at = "front.1 | left strap.1"
by = -2

[[attach]]
edge = "hem"
over = ["front"]
parts = [{ plain_mm = 60 }, { gathered_mm = 90, cloth_mm = 140.5 }]

[thread]
size = "40"
hook_mm = 1.0
ball_g = 20
waste = 0.15
sample = [{ stitch = "dc", stitches = 40, used_mm = 960, width_mm = 48, height_mm = 3.1 }]
"""

HEAD = """\
format = 1
[yoke]
loops = 16
joined = 3
"""

COLLAR = """
[[strip]]
name = "collar"
motifs = 7
sides = ["neck 4", "outside 6"]
from = "collar.7"
to = "collar.1"
"""


def read(text: str) -> Project:
    """A project without a fault of form."""
    project, findings = read_project(Source("yoke.toml", text))
    assert findings == ()
    assert project is not None
    return project


def told(text: str) -> tuple[tuple[Edge, ...], YokeReport, tuple[Finding, ...]]:
    """Edges, report and findings; every finding has a place in the text."""
    edges, report, findings = trace(read(text))
    for f in findings:
        assert f.span is not None and f.span.source == "yoke.toml"
        assert text[f.span.start : f.span.end]
    return edges, report, findings


def good(text: str) -> tuple[dict[str, Edge], YokeReport]:
    """The edges by name, and the report, of a yoke without a fault."""
    edges, report, findings = told(text)
    assert findings == ()
    assert report.goes_together
    return {edge.name: edge for edge in edges}, report


def faults(text: str) -> list[tuple[str, str, str]]:
    """The findings as (code, message, help)."""
    return [(f.code, f.message, f.help or "") for f in told(text)[2]]


def ring(report: YokeReport, motif: str) -> str:
    """The ring of a motif as a sum."""
    return next(r.shown for r in report.rings if r.motif == motif)
