"""The project file: its shape, and what is told of a wrong one."""

from __future__ import annotations

import random

import pytest
from yokes import EVERYTHING, FERN

from border.findings import Finding
from border.text.source import Source
from border.yoke.edges import trace
from border.yoke.project import Project, read_project


def read(text: str) -> tuple[Project | None, tuple[Finding, ...]]:
    return read_project(Source("fern.toml", text))


def good(text: str) -> Project:
    project, findings = read(text)
    assert findings == ()
    assert project is not None
    return project


def faults(text: str) -> list[tuple[str, str, str, str]]:
    """The findings as (code, message, help, the text pointed at)."""
    _, findings = read(text)
    found = []
    for f in findings:
        assert f.span is not None
        found.append((f.code, f.message, f.help or "", text[f.span.start : f.span.end]))
    return found


def test_every_key_of_the_format_is_read() -> None:
    project = good(EVERYTHING)
    assert (project.name, project.hand) == ("Fern yoke", "left")
    yoke = project.yoke
    assert yoke is not None
    assert (yoke.loops, yoke.of, yoke.joined, yoke.seam_loops, yoke.motif_mm) == (
        *(16, "picot", 3, 1),
        42,
    )
    front, strap = project.strips
    assert (front.name, front.motifs, front.first, front.last) == ("front", 5, None, None)
    assert strap.first and strap.last
    assert (strap.first.text, strap.last.text) == ("front.1", "back.5")
    assert [side.text for side in strap.sides] == ["neck 3", "left armhole 7"]
    ringed, mirrored = project.motifs
    assert ringed.ring and [w.text for w in ringed.ring][-2:] == [
        "left armhole 0",
        "join left strap.1 by 2",
    ]
    assert mirrored.mirror_of and mirrored.mirror_of.text == "left underarm.1"
    assert [w.text for w in project.labels[0].motifs] == ["left underarm.2", "right underarm.2"]
    cuff, pocket = project.edges
    assert not cuff.closed and pocket.closed
    assert [(r.section, r.motifs, r.places) for r in cuff.runs] == [("cuff", 7, 6), ("cuff", 1, 5)]
    assert (pocket.places, pocket.of, pocket.runs) == (90, "stitch", ())


def test_work_attachments_and_thread_are_carried() -> None:
    project = good(EVERYTHING)
    (work,) = project.works
    assert (work.edge, work.border, work.done) == ("neck", "fern.border", 3)
    assert work.start and work.start.text == "front.1"
    assert [w.text for w in work.mirror] == ["front.3", "back.3"]
    assert work.found and (work.found.round, work.found.counts) == (3, (("spaces", 71),))
    assert [(a.round, a.at, a.by) for a in work.adjustments] == [
        (5, "left strap", 1),
        (6, "front.1 | left strap.1", -2),
    ]
    (attached,) = project.attachments
    assert (attached.edge, [name.text for name in attached.over]) == ("hem", ["front"])
    assert [(p.plain_mm, p.gathered_mm, p.cloth_mm) for p in attached.parts] == [
        (60, None, None),
        (None, 90, 140.5),
    ]
    thread = project.thread
    assert thread is not None
    assert (thread.size, thread.hook_mm, thread.ball_g, thread.waste) == ("40", 1.0, 20, 0.15)
    (sample,) = thread.sample
    assert (sample.stitch, sample.stitches, sample.used_mm) == ("dc", 40, 960)


def test_what_may_be_left_out() -> None:
    project = good('format = 1\n[[edge]]\nname = "cuff"\nplaces = 90')
    assert (project.name, project.hand, project.yoke, project.thread) == (None, "right", None, None)
    assert project.edges[0].closed


def test_an_unknown_key_is_told_with_the_nearest_and_read_as_meant() -> None:
    text = FERN.replace("motifs = 5", "motif = 5", 1).replace("hook_mm", "hook-mm")
    assert faults(text) == [
        ("unknown-key", 'there is no key "motif" in [[strip]] no. 1', 'write "motifs"', "motif"),
        ("unknown-key", 'there is no key "hook-mm" in [thread]', 'write "hook_mm"', "hook-mm"),
    ]
    project, _ = read(text)
    assert project is not None
    assert project.strips[0].motifs == 5
    assert project.thread and project.thread.hook_mm == 1.75


def test_an_unknown_key_like_none_is_left_out() -> None:
    text = FERN.replace("ball_m = 21", "ball_m = 21\ncolour = 3")
    ((code, message, help_, at),) = faults(text)
    assert (code, message, at) == ("unknown-key", 'there is no key "colour" in [thread]', "colour")
    assert help_.startswith("the keys here are size, tex, den, nm, ne, hook_mm")


@pytest.mark.parametrize(
    ("old", "new", "message", "help_", "at"),
    [
        (
            "loops = 16",
            'loops = "16"',
            '"loops" must be a whole number, not "16"',
            "write loops = 16, without quotation marks",
            '"16"',
        ),
        ("loops = 16", "loops = 0", '"loops" must be 1 or more, not 0', "as in loops = 16", "0"),
        (
            "loops = 16",
            "loops = 16.5",
            '"loops" must be a whole number, not 16.5',
            "as in loops = 16",
            "16.5",
        ),
        (
            "loops = 16",
            "loops = true",
            '"loops" must be a whole number, not true',
            "as in loops = 16",
            "true",
        ),
        (
            'sides = ["neck 5", "hem 5"]',
            'sides = ["neck 5", 5]',
            'no. 2 of "sides" must be words in quotation marks, not 5',
            'as in sides = ["neck 5", "hem 5"]',
            "5",
        ),
        (
            'sides = ["neck 5", "hem 5"]',
            'sides = ["neck 5"]',
            '"sides" must be a list of 2 or more, not a list of 1',
            'as in sides = ["neck 5", "hem 5"]',
            '["neck 5"]',
        ),
        ("format = 1", "", '"format" is missing', "write format = 1", ""),
        ("format = 1", "format = 2", '"format" must be 1, not 2', "as in format = 1", "2"),
        ('size = "10"', "size = 10", '"size" must be words in quotation marks, not 10', "", "10"),
        ("hook_mm = 1.75", "hook_mm = -1.0", '"hook_mm" must be more than 0, not -1.0', "", "-1.0"),
        ('size = "10"', 'size = "10"\ntex = 91', "the thread has a size, and a tex too", "", ""),
        (
            'name = "underarm"',
            'name = "under | arm"',
            "a name cannot have '|' in it",
            "use letters, numbers, dots and spaces",
            '"under | arm"',
        ),
    ],
)
def test_a_bad_value_is_told_where_it_stands(
    old: str, new: str, message: str, help_: str, at: str
) -> None:
    assert old in FERN
    text = FERN.replace(old, new, 1)
    ((code, said, advice, pointed),) = faults(text)
    assert (code, said) == ("bad-value", message)
    assert help_ in advice
    assert at in pointed


def test_one_run_shows_faults_of_form_and_of_the_yoke() -> None:
    text = FERN.replace('size = "10"', "size = 10").replace(
        '"neck 5", "hem 5"', '"neck 5", "hem 6"'
    )
    project, findings = read(text)
    assert [f.code for f in findings] == ["bad-value"]
    assert project is not None
    assert project.thread is None
    _, _, told = trace(project)
    assert {f.code for f in told} == {"loops-do-not-add-up"}


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("format = 1", "the project has neither a yoke nor an edge"),
        (
            'format = 1\n[[strip]]\nname = "a"\nmotifs = 2\nsides = ["x 1", "y 1"]',
            "there are motifs, but no [yoke] to say how many loops they have",
        ),
        ('format = 1\n[[edge]]\nname = "a"', 'the edge "a" has no places'),
        (
            'format = 1\n[[edge]]\nname = "a"\nplaces = 3\nruns = [{section = "s", places = 1}]',
            'the edge "a" has runs, and plain places too',
        ),
        ('format = 1\n[yoke]\nloops = 1\n[[motif]]\nname = "a"', "a says nothing of its ring"),
    ],
)
def test_what_belongs_together(text: str, message: str) -> None:
    project, findings = read(text)
    assert project is None
    assert [(f.code, f.message) for f in findings] == [("bad-value", message)]


@pytest.mark.parametrize(
    ("part", "whole"),
    [
        ("plain_mm = 60", True),
        ("gathered_mm = 90, cloth_mm = 140", True),
        ("gathered_mm = 90, cloth_mm = 90", True),
        ("gathered_mm = 90", False),
        ("cloth_mm = 140", False),
        ("plain_mm = 60, gathered_mm = 90, cloth_mm = 140", False),
        ("plain_mm = 60, cloth_mm = 140", False),
        ("", False),
    ],
)
def test_a_part_of_a_seam_is_plain_or_gathered(part: str, whole: bool) -> None:
    edge = 'format = 1\n[[edge]]\nname = "hem"\nplaces = 30\n'
    _, findings = read(f'{edge}[[attach]]\nedge = "hem"\nparts = [{{ {part} }}]\n')
    told = [] if whole else [("bad-value", "a part is either plain or gathered")]
    assert [(f.code, f.message) for f in findings] == told


@pytest.mark.parametrize(
    ("text", "at", "help_"),
    [
        ("format = 1\nloops = sixteen\n", 19, "words go in quotation marks"),
        ('format = 1\nname = "Fern\n', 23, "words stand between two quotation marks"),
        ("format = 1\r\nformat = 1\r\n", 22, "a key is written twice"),
        ("\ufeffloops 16", 7, "a key is followed by ="),
        ("a = [1, 2", 9, ""),
        ("a = " + "[" * 9000, 0, "a ring or a run is a list one deep"),
    ],
)
def test_what_is_no_toml_is_told_with_its_place(text: str, at: int, help_: str) -> None:
    project, (finding,) = read(text)
    assert project is None
    assert finding.code == "not-toml"
    assert finding.span and finding.span.start == at
    assert help_ in (finding.help or "")


def test_a_file_with_a_byte_order_mark_is_read() -> None:
    assert good("\ufeff" + FERN).name == "Fern yoke"


def test_no_mutilated_file_is_more_than_a_finding() -> None:
    draw = random.Random(1895)
    pieces = ["", "=", '"', "[", "]]", "\n", "0", "-1", "join ", "front.1", "{", "99999999999999"]
    for _ in range(300):
        text = draw.choice([FERN, EVERYTHING])
        for _ in range(draw.randint(1, 3)):
            start = draw.randrange(len(text))
            text = text[:start] + draw.choice(pieces) + text[start + draw.randint(0, 9) :]
        project, findings = read(text)
        assert project is not None or findings
        told = findings if project is None else (*findings, *trace(project)[2])
        for finding in told:
            assert finding.span is not None
            assert 0 <= finding.span.start <= finding.span.end <= len(text)


def test_behind_a_work_that_is_left_aside_findings_point_at_the_right_one() -> None:
    work = '[[work]]\nedge = "neck"\nborder = "BORDER"\n'
    text = (
        'format = 1\n[[edge]]\nname = "neck"\nplaces = 9\n'
        + work.replace("BORDER", "a") + 'done = "three"\n'
        + work.replace("BORDER", "b")
        + work.replace("BORDER", "c") + "curve = 1\n"
        + work.replace("BORDER", "d")
    )  # fmt: skip
    project, findings = read(text)
    assert project is not None
    assert [f.code for f in findings] == ["bad-value", "bad-value"]
    for one, name in zip(project.works, "bd", strict=True):
        assert text[one.border_span.start : one.border_span.end] == f'"{name}"'
        assert text[: one.span.start].count("[[work]]") == "abcd".index(name)
