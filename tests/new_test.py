"""`border new`: what is asked, which answers can be, and the project that is made of them."""

from __future__ import annotations

import json
import math
import os
import pty
import select
import subprocess
import sys
import tomllib
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import NamedTuple

import jsonschema
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from svgs import check_svg, named, texts

from border.arguments import NEW
from border.cli import main
from border.pipeline import Pipeline
from border.showing.schema import schema
from border.showing.starter import Starter
from border.showing.starter_project import quoted
from border.showing.starter_sketch import sketch
from border.starting import made, next_question, questions
from border.text.source import Source
from border.yoke.answers import (
    Choice,
    FreeLoops,
    Measure,
    Number,
    Question,
    Refused,
    Said,
    Value,
    number,
    numbers,
    word,
    written,
)
from border.yoke.shapes import SHAPES, flat_ring


def answered(shape: str, **given: str) -> dict[str, Value]:
    """The answers of a shape: as given, else as usual."""
    said: dict[str, Value] = {"shape": shape}
    while question := next_question("my-yoke", said):
        value = question.usual(said)
        if question.key in given:
            found = question.read(given[question.key], said)
            assert not isinstance(found, Refused), found
            value = found
        said[question.key] = value
    assert given.keys() <= said.keys()
    return said


def refused(shape: str, key: str, text: str, **given: str) -> tuple[str, str]:
    """How an answer is refused, after others; and what is said to do."""
    said = answered(shape, **given)
    question = next(q for q in questions("", said) if q.key == key)
    before = list(said)[: list(said).index(key)]
    found = question.read(text, {k: said[k] for k in before})
    assert isinstance(found, Refused), found
    return found.message, found.help


def read_back(starter: Starter) -> Pipeline:
    """The project, read and counted as any other."""
    project = next(iter(starter.files))
    return Pipeline(project, lambda name: Source(name, starter.files[name]))


# --- the projects -------------------------------------------------------------------


@pytest.mark.parametrize("shape", SHAPES)
def test_the_usual_answers_give_a_project_without_a_fault(shape: str) -> None:
    pipeline = read_back(made("my-yoke", answered(shape)))
    assert [f.code for f in pipeline.counted.findings] == ["thread-uncalibrated"]
    assert all(piece.closes for piece in pipeline.counted.pieces)
    worked = {piece.edge.name for piece in pipeline.counted.pieces}
    assert worked == {edge.name for edge in pipeline.edges}


def test_the_usual_yoke_is_the_demo() -> None:
    """The Fern yoke was written by hand: the same wheels, on the same edges, one by one."""
    text = Path("patterns/fern.toml").read_text("utf-8")
    fern = Pipeline("fern.toml", lambda name: Source(name, text))
    asked = made("my-yoke", answered("yoke"))

    def runs(edges: object) -> dict[str, list[tuple[str, int, int, frozenset[str]]]]:
        assert isinstance(edges, tuple)
        return {e.name: [(r.motif, r.free, r.places, r.names) for r in e.runs] for e in edges}

    assert runs(asked.edges) == runs(fern.edges)


@st.composite
def any_answers(draw: st.DrawFn) -> dict[str, Value]:
    """Answers that are allowed, some of them at their limits."""
    shape = draw(st.sampled_from(sorted(SHAPES)))
    said: dict[str, Value] = {"shape": shape}
    while question := next_question("my-yoke", said):
        said[question.key] = draw(_allowed(question, said))
    return said


def _allowed(question: Question, said: Said) -> st.SearchStrategy[Value]:
    match question:
        case Choice(of=of):
            return st.sampled_from(of)
        case Number(least=least):
            most = question.most(said)
            few = min(most, 12 if question.key == "loops" else 9)
            some = st.integers(least, max(few, least)) | st.sampled_from((least, min(most, 20)))
            return some.map(lambda n: (max(n, least),))
        case Measure(most=most):
            return st.just("") | st.integers(1, most).map(str)
        case FreeLoops():
            left = question.left(said)
            cuts = st.lists(
                st.integers(0, left),
                min_size=len(question.sides) - 1,
                max_size=len(question.sides) - 1,
            )
            split = cuts.map(
                lambda c: tuple(
                    b - a for a, b in zip((0, *sorted(c)), (*sorted(c), left), strict=True)
                )
            )
            return split.filter(
                lambda free: not isinstance(question.read(",".join(map(str, free)), said), Refused)
            )
        case _:
            given = st.text(max_size=30) | st.sampled_from(NAMES)
            return given.filter(lambda t: not isinstance(question.read(t, said), Refused)).map(
                lambda t: question.read(t, said)  # type: ignore[arg-type, return-value]
            )


NAMES = (
    '"Bea\'s" \\ yoke',
    "кокетка",
    "肩ヨーク 春",
    "יוקה",
    "یوک‌نو",
    "<script>",
    "a # b = 'c'",
    '"""',
)


@settings(max_examples=60, deadline=None, derandomize=True)
@given(said=any_answers())
def test_any_allowed_answers_give_a_project_that_goes_together_and_counts(said: Said) -> None:
    starter = made("my-yoke", said)
    pipeline = read_back(starter)
    assert [f.code for f in pipeline.counted.findings] == ["thread-uncalibrated"]
    assert pipeline.yoke is not None
    assert pipeline.yoke.goes_together
    assert pipeline.project is not None
    assert pipeline.project.name == word(said, "name")
    assert pipeline.project.hand == word(said, "hand")
    assert pipeline.counted.pieces
    assert all(piece.closes and piece.whole for piece in pipeline.counted.pieces)
    loops_add_up(said, pipeline)
    check_svg(starter.files[f"{word(said, 'shape')}.svg"])


def loops_add_up(said: Said, pipeline: Pipeline) -> None:
    """Every loop of every wheel is in a joint or on an edge: two ways to count the same."""
    loops, joined, seam = (number(said, key) for key in ("loops", "joined", "seam"))
    assert pipeline.yoke is not None
    on_edges = sum(edge.places for edge in pipeline.edges)
    if word(said, "shape") == "strip":
        assert on_edges == number(said, "wheels") * (numbers(said, "free")[0] + 2 * seam)
        return
    wheels, joints = pipeline.yoke.motifs, pipeline.yoke.joints
    if word(said, "shape") == "yoke":
        parts = [number(said, key) for key in ("front", "back", "strap", "underarm")]
        assert wheels == parts[0] + parts[1] + 2 * (parts[2] + parts[3])
        assert joints == wheels + 2  # three holes beside the hem: Euler, V - E + 4 = 2
    else:
        assert wheels == joints == number(said, "wheels")
    assert on_edges == wheels * loops - 2 * joints * joined + 4 * joints * seam


@settings(max_examples=60, deadline=None, derandomize=True)
@given(said=any_answers())
def test_answers_typed_again_are_the_same(said: Said) -> None:
    """`border new` names its answers as options: given so, they make the same project."""
    again: dict[str, Value] = {}
    while question := next_question("my-yoke", again):
        value = question.read(written(said[question.key]), again)
        assert not isinstance(value, Refused)
        again[question.key] = value
    assert again == said


@settings(deadline=None, derandomize=True)
@given(text=st.text(alphabet=st.characters(exclude_categories=("Cc", "Cs"))))
def test_any_name_stands_in_the_file_as_it_was_given(text: str) -> None:
    assert tomllib.loads(f"name = {quoted(text)}") == {"name": text}


def test_the_left_hand_works_every_edge_the_other_way() -> None:
    right, left = (made("x", answered("yoke", hand=hand)).edges for hand in ("right", "left"))
    for one, other in zip(right, left, strict=True):
        assert one.name == other.name
        there, back = [r.motif for r in one.runs], [r.motif for r in other.runs]
        assert back == there[:1] + there[:0:-1]
    text = made("x", answered("yoke", hand="left")).files["yoke.toml"]
    assert "the left one works every edge the other way" in " ".join(text.replace("#", "").split())


@pytest.mark.parametrize("terms", ["us", "uk", "early"])
def test_the_border_is_in_the_terms_asked_for(terms: str) -> None:
    starter = made("x", answered("cuff", terms=terms))
    piece = read_back(starter).counted.pieces[0]
    assert piece.terms == terms
    made_of = [r.made.stitches for r in piece.rounds]
    assert made_of == [{"sc": 49}, {"dc": 49}, {"sc": 98}]


def test_the_width_of_a_wheel_stands_in_the_project_where_it_is_known() -> None:
    project = read_back(made("x", answered("collar", across="38"))).project
    assert project is not None and project.yoke is not None
    assert project.yoke.motif_mm == 38
    for text, mm in {"15.5": 15.5, "15,5": 15.5, "38 mm": 38, "4.2cm": 42, "": None}.items():
        project = read_back(made("x", answered("collar", across=text))).project
        assert project is not None and project.yoke is not None
        assert project.yoke.motif_mm == mm
    assert "\n# motif_mm = 42 " in made("x", answered("collar")).files["collar.toml"]


# --- which answers can be ---------------------------------------------------------------


def test_a_sum_that_cannot_be_is_shown() -> None:
    assert refused("yoke", "free", "5 6") == (
        "neck 5 + joint 3 + hem 6 + joint 3 = 17, 1 too many for a wheel of 16 loops",
        "with neck 5 it is hem 5",
    )
    assert refused("yoke", "corner_free", "2,3,0") == (
        "neck 2 + joint 3 + hem 3 + joint 3 + armhole 0 + joint 3 = 14, "
        "2 too few for a wheel of 16 loops",
        "with neck 2 and hem 3 it is armhole 2",
    )
    assert refused("collar", "free", "12") == (
        "neck 12 + joint 3 + joint 3 = 18, 2 too many for a wheel of 16 loops",
        "its joints leave 10 free in all",
    )
    assert refused("yoke", "joined", "6") == (
        "three joints of 6 make 18, of the 16 loops of a wheel",
        "give from 1 to 5",
    )
    assert refused("cuff", "joined", "8") == (
        "two joints of 8 make 16, of the 16 loops of a wheel, and 2 are to be left for its two "
        "sides",
        "give from 1 to 7",
    )
    assert refused("cuff", "seam", "2") == (
        "2 at each end of a joint makes 4, and a joint takes up 3",
        "give from 0 to 1",
    )
    assert refused("cuff", "seam", "1", joined="1") == (
        "1 at each end of a joint makes 2, and a joint takes up 1",
        "give 0",
    )


def test_a_side_with_nothing_to_work_into_is_refused() -> None:
    message, _ = refused("cuff", "free", "10 0", seam="0")
    assert message == "no loop is left at the sleeve, so that nothing could be worked there"
    assert answered("cuff", free="10 0")["free"] == (10, 0)  # seam loops are left there
    assert answered("strip", seam="0", free="10 0")["free"] == (10, 0)  # that side is not worked


@pytest.mark.parametrize(
    ("shape", "key", "text", "message"),
    [
        ("cuff", "wheels", "two", '"two" is no whole number'),
        ("cuff", "wheels", "2", "2 is too few"),
        ("cuff", "wheels", "2.5", '"2.5" is no whole number'),
        ("cuff", "wheels", "-7", '"-7" is no whole number'),
        ("cuff", "wheels", "", '"" is no whole number'),
        ("cuff", "wheels", "999", "999 wheels are more than the 200 that are made here"),
        ("cuff", "loops", "5", "5 is too few"),
        ("cuff", "loops", "101", "101 loops are more than the 100 that a wheel may have here"),
        ("cuff", "across", "4200", "4200 mm is too large for a wheel"),
        ("cuff", "across", "0.5", "0.5 mm is too small for a wheel"),
        ("cuff", "across", "wide", '"wide" is no length'),
        ("cuff", "across", "4 2", '"4 2" is no length'),
        ("cuff", "free", "5 5 0", '"5 5 0" is not 2 whole numbers, for wrist, sleeve'),
        ("cuff", "free", "all", '"all" is not 2 whole numbers, for wrist, sleeve'),
        ("yoke", "corner_free", "2", '"2" is not 3 whole numbers, for neck, hem, armhole'),
        ("cuff", "shape", "shawl", '"shawl" is none of yoke, collar, cuff, strip'),
        ("cuff", "name", " ", "a name is missing"),
        ("cuff", "name", "a\x07b", "the name has a sign that cannot be printed"),
        ("cuff", "name", "a\u202eb", "the name has a sign that cannot be printed"),
        ("cuff", "name", "a" * 201, "the name has 201 letters"),
    ],
)
def test_an_answer_that_cannot_be_is_refused(shape: str, key: str, text: str, message: str) -> None:
    assert refused(shape, key, text)[0] == message


@settings(max_examples=200, deadline=None, derandomize=True)
@given(said=any_answers(), key=st.sampled_from(sorted(NEW)), text=st.text(max_size=12))
def test_whatever_is_typed_is_an_answer_or_refused(said: Said, key: str, text: str) -> None:
    for question in questions("", said):
        if question.key == key:
            found = question.read(text, said)
            assert isinstance(found, Refused | str | tuple)


def test_the_usual_collar_lies_flat() -> None:
    """Geometry: the corners of a regular polygon of N sides have 180 - 360 / N degrees.

    A quarter of four wheels, a sixth part of six … is drawn: from joint to joint inside a
    wheel there are so many degrees, and so many of its loops lie there, a joint's worth
    between the middles of the joints.
    """
    for wheels in range(3, 60):
        for loops, joined in ((16, 3), (24, 3), (12, 2), (20, 1)):
            inside = flat_ring(wheels, loops, joined)
            middles = [
                complex(math.cos(a), math.sin(a)) for a in (math.tau * n / wheels for n in range(3))
            ]
            before, at, behind = middles
            corner = abs(math.degrees(_angle(before - at, behind - at)))
            loops_inside = loops * corner / 360
            assert 1 <= inside <= loops - 2 * joined - 1
            if 1.5 <= loops_inside - joined <= loops - 2 * joined - 1.5:
                assert abs(inside + joined - loops_inside) <= 0.5 + 1e-9


def _angle(a: complex, b: complex) -> float:
    return math.atan2((a.conjugate() * b).imag, (a.conjugate() * b).real)


# --- the sketch, the picture ---------------------------------------------------------------


def test_the_sketch_shows_each_wheel_by_a_letter() -> None:
    said = answered("yoke", front="7", back="5", strap="3", underarm="2")
    assert sketch(said) == (
        "       c b b b c\n"
        "   u s           s u\n"
        "   u s   neck    s u\n"
        "     s           s\n"
        "     c f f f f f c\n"
        "   b back, f front, s strap, u underarm, c corner\n"
    )


def test_a_large_yoke_is_sketched_without_its_middle() -> None:
    said = answered("yoke", front="200", back="200", strap="200", underarm="200")
    lines = sketch(said).splitlines()
    assert len(lines) == 12
    assert max(map(len, lines)) < 60
    assert "…" in lines[0]


def test_the_picture_shows_all_wheels() -> None:
    root = check_svg(made("x", answered("yoke", name="<b>&")).files["yoke.svg"])
    assert len(named(root, "wheel")) == 20
    assert "<b>&" in texts(root)


# --- the command -----------------------------------------------------------------------------


class Ran(NamedTuple):
    code: int
    out: str
    err: str


New = Callable[..., Ran]


@pytest.fixture
def new(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> New:
    """Runs the command in an empty folder, its answers `typed` where there is a terminal."""
    monkeypatch.chdir(tmp_path)

    def run(*arguments: str, typed: list[str] | None = None) -> Ran:
        left: Iterator[str] = iter(typed or ())

        def answer(asked: str) -> str:
            print(asked, end="")
            try:
                given = next(left)
            except StopIteration:
                raise EOFError from None
            print(given)
            return given

        monkeypatch.setattr("builtins.input", answer)
        monkeypatch.setattr("border.cli.questions.is_terminal", lambda _: typed is not None)
        code = main(("new", *arguments))
        assert next(left, None) is None
        return Ran(code, *capsys.readouterr())

    return run


def test_the_options_are_the_questions() -> None:
    asked = {q.key for shape in SHAPES for q in questions("", {"shape": shape})}
    assert asked == set(NEW)


def test_without_a_terminal_nothing_is_asked_and_the_usual_is_named(new: New) -> None:
    ran = new("my collar", "--shape", "collar", "--wheels", "24")
    assert ran.code == 0
    assert ran.err == ""
    assert sorted(os.listdir("my collar")) == ["collar.border", "collar.svg", "collar.toml"]
    assert (
        "not said, so as usual: --loops 16 --joined 3 --seam 1 --free 4,6\n"
        "  --name 'my collar' --hand right --terms us\n"
    ) in ran.out
    assert "neck     closed edge of 144 loops on 24 motifs" in ran.out


COMMANDS = ("check", "count", "close", "adjust", "sheet", "write", "yoke", "chart")


@pytest.mark.parametrize("shape", SHAPES)
def test_every_command_takes_what_was_made(new: New, shape: str) -> None:
    assert new("x", "--shape", shape).code == 0
    for command in COMMANDS:
        assert main((command, f"x/{shape}.toml")) == 0, command


def test_in_json_the_answers_are_named_too(new: New) -> None:
    record = json.loads(new("x", "--shape", "collar", "--wheels", "24", "--json").out)
    jsonschema.validate(record, schema() | {"$ref": "#/$defs/NewRecord"})
    assert record["made"] == ["x/collar.toml", "x/collar.border", "x/collar.svg"]
    assert record["answers"]["wheels"] == "24"
    assert record["answers"]["free"] == "4,6"
    assert "wheels" not in record["usual"]
    assert "free" in record["usual"]


@pytest.mark.parametrize(
    ("options", "message", "help_"),
    [
        (
            ("--shape", "yoke", "--free", "5,6"),
            "--free: neck 5 + joint 3 + hem 6 + joint 3 = 17, 1 too many for a wheel of 16 loops",
            "with neck 5 it is hem 5",
        ),
        (
            ("--shape", "collar", "--strap-free", "3,7"),
            "--strap-free goes with --shape yoke, not with collar",
            "with it go --shape, --wheels, --loops",
        ),
        (
            ("--wheels", "zwölf"),
            '--wheels: "zwölf" is no whole number',
            "as in 7",
        ),
    ],
)
def test_options_that_cannot_be_make_nothing(
    new: New, options: tuple[str, ...], message: str, help_: str
) -> None:
    ran = new("x", *options)
    assert ran.code == 2
    assert f"border: {message}\n{help_}" in ran.err
    assert ran.out == ""
    assert not os.listdir()


YOKE = ["yoke", "5", "5", "3", "2", "", "3", "1"]


def test_at_a_terminal_she_is_asked_and_a_wrong_sum_is_asked_again(new: New) -> None:
    ran = new("x", typed=[*YOKE, "5 6", "4 6", "", "4", "2 6 0", "1 6", "42", "", "left", "uk"])
    assert ran.code == 0
    assert "neck 5 + joint 3 + hem 6 + joint 3 = 17, 1 too many for a wheel of 16 loops" in ran.out
    assert ran.out.count("a wheel of front or back (f, b), free at neck and hem [5,5]: ") == 2
    assert "  armhole 4 + joint 3 + hem 6 + joint 3 = 16\n" in ran.out
    assert "not said" not in ran.out
    project = tomllib.loads(Path("x/yoke.toml").read_text("utf-8"))
    assert project["name"] == "x"
    assert project["hand"] == "left"
    assert project["yoke"] == {"loops": 16, "joined": 3, "seam_loops": 1, "motif_mm": 42}
    assert project["strip"][0]["sides"] == ["neck 4", "hem 6"]
    assert project["motif"][0]["ring"][0::2] == ["neck 1", "hem 6", "left armhole 0"]
    assert "terms: uk" in Path("x/yoke.border").read_text("utf-8")
    assert main(["count", "x/yoke.toml"]) == 0


def test_the_dialogue_of_the_manual_is_a_real_one(new: New) -> None:
    manual = (Path(__file__).parents[1] / "README.md").read_text("utf-8")
    after = manual.split("    border new my-yoke\n", 1)[1]
    begin, end = after.index("    the shape ["), after.index("The project has a comment")
    dialogue = "".join(
        line.removeprefix("    ") for line in after[begin:end].splitlines(keepends=True)
    )
    asked = [line for line in dialogue.splitlines() if line.startswith(ASKED)]
    typed = [line.rpartition(":")[2].strip() for line in asked]
    ran = new("my-yoke", typed=typed)
    assert dialogue.strip() in "\n".join(line.rstrip() for line in ran.out.splitlines())


ASKED = ("the ", "wheels ", "loops ", "of th", "a ", "an ", "its ", "stitch ")


def test_back_goes_back_to_the_question_before(new: New) -> None:
    typed = ["back", "yoke", "5", "back", "back", "collar", "9", "16", "5", "back", "", "1"]
    ran = new("x", typed=[*typed, "5", "", "", "", ""])
    assert ran.code == 0
    project = tomllib.loads(Path("x/collar.toml").read_text("utf-8"))
    assert project["strip"][0]["motifs"] == 9
    assert project["yoke"]["joined"] == 3


def test_only_what_no_option_says_is_asked(new: New) -> None:
    options = ["--shape", "cuff", "--wheels", "2", "--name", "Cuff", "--hand", "right"]
    ran = new("x", *options, "--terms", "us", typed=["8", "16", "3", "1", "", ""])
    assert ran.code == 0
    assert "--wheels: 2 is too few" in ran.out
    assert "the shape [" not in ran.out
    assert tomllib.loads(Path("x/cuff.toml").read_text("utf-8"))["strip"][0]["motifs"] == 8


def test_usual_and_json_ask_nothing(new: New) -> None:
    assert "not said, so as usual: --shape cuff" in new("x", "--usual", typed=[]).out
    assert json.loads(new("y", "--json", typed=[]).out)["usual"]


def test_questions_that_are_left_make_nothing(new: New) -> None:
    ran = new("x", typed=["yoke", "5"])
    assert ran.code == 2
    assert "the questions were left, and x is not made" in ran.err
    assert not os.listdir()


def test_nothing_is_asked_where_nothing_can_be_made(new: New) -> None:
    Path("x").mkdir()
    assert "already something at x" in new("x", typed=[]).err
    assert "cannot be made" in new("gone/x", typed=[]).err


def test_at_a_real_terminal(tmp_path: Path) -> None:
    """The program on a pseudo-terminal, typed at as by hand."""
    ours, theirs = pty.openpty()
    command = [sys.executable, "-m", "border", "new", "x", "--shape", "strip"]
    with subprocess.Popen(command, cwd=tmp_path, stdin=theirs, stdout=theirs, stderr=theirs) as ran:
        os.close(theirs)
        os.write(ours, "9\n12\n4\n2\n2\n\n肩の襟\n\n\n".encode())
        seen = b""
        while select.select([ours], [], [], 20)[0]:
            try:
                part = os.read(ours, 4096)
            except OSError:  # the other side is closed
                break
            if not part:
                break
            seen += part
    os.close(ours)
    assert ran.returncode == 0, seen.decode()
    assert "bordered side 2 + joint 4 + other side 2 + joint 4 = 12" in seen.decode()
    project = tomllib.loads((tmp_path / "x" / "strip.toml").read_text("utf-8"))
    assert project["name"] == "肩の襟"
    assert project["edge"][0]["runs"] == [{"section": "strip", "motifs": 9, "places": 6}]
