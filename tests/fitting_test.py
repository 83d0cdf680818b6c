"""`flat`, `attach` and `size` from the outside: what is printed where, and the exit codes."""

from __future__ import annotations

import json
import shutil
from collections.abc import Callable
from pathlib import Path

import jsonschema
import pytest

from border.showing.schema import schema

DEMO = Path(__file__).parent.parent / "patterns"
Border = Callable[..., tuple[int, str, str]]


@pytest.fixture
def border(border: Border, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Border:
    """Runs the program in a folder with the demo in it."""
    shutil.copytree(DEMO, tmp_path / "patterns")
    monkeypatch.chdir(tmp_path / "patterns")
    return border


ASKED = {
    "FlatRecord": ("flat", "fern.toml"),
    "AttachRecord": ("attach", "fern.toml"),
    "SizeRecord": ("size", "fern.toml", "--more", "front=1,back=1"),
}


@pytest.mark.parametrize("shape", ASKED)
def test_each_answers_in_words_and_in_json_by_the_schema(border: Border, shape: str) -> None:
    code, out, err = border(*ASKED[shape])
    assert code == 0
    assert "Fern" in out or "hem" in out
    assert "Traceback" not in err
    code, out, err = border(*ASKED[shape], "--json")
    assert (code, err) == (0, "")
    whole = schema()
    jsonschema.Draft202012Validator({"$ref": f"#/$defs/{shape}", "$defs": whole["$defs"]}).validate(
        json.loads(out)
    )


def test_one_edge_is_picked(border: Border) -> None:
    _, out, _ = border("flat", "fern.toml", "--work", "hem")
    assert out.startswith("hem: Fern hem")
    assert "neck" not in out
    _, out, _ = border("attach", "fern.toml", "--work", "hem")
    assert "hem, over front" in out
    code, out, err = border("flat", "fern.toml", "--work", "sleeve")
    assert (code, out) == (2, "")
    assert "the edges worked are" in err


def test_the_same_is_printed_for_the_same(border: Border) -> None:
    for asked in (*ASKED.values(), ("size", "fern.toml", "--edge", "neck", "--length", "120")):
        assert border(*asked) == border(*asked)


def test_a_length_is_given_in_mm_or_in_cm(border: Border) -> None:
    same = [
        border("size", "fern.toml", "--edge", "neck", "--length", length)[:2]
        for length in ("120", "120mm", "12cm", "12 cm")
    ]
    assert same[0][0] == 0
    assert same == [same[0]] * 4


@pytest.mark.parametrize(
    ("asked", "said"),
    [
        (("flat", "fern-neck.border"), "fern-neck.border is no project"),
        (("attach", "fern-as-written.toml"), "nothing is sewn to cloth in fern-as-written.toml"),
        (("size", "fern.toml"), "say either a length or how many wheels more"),
        (("size", "fern.toml", "--length", "80"), "--edge and --length go together"),
        (("size", "fern.toml", "--edge", "neck"), "say either"),
        (("size", "fern.toml", "--edge", "nek", "--length", "80"), 'there is no edge "nek"'),
        (("size", "fern.toml", "--edge", "neck", "--length", "wide"), '"wide" is no length'),
        (("size", "fern.toml", "--edge", "neck", "--length", "0"), '"0" is no length'),
        (("size", "fern.toml", "--edge", "neck", "--length", "9999999"), "is no length"),
        (("size", "fern.toml", "--more", "sleeve=1"), 'there is no section "sleeve"'),
        (("size", "fern.toml", "--more", "front"), "does not say how many wheels more"),
        (("size", "fern.toml", "--more", "front=0"), "does not say how many wheels more"),
        (("size", "fern.toml", "--more", "front=1,front=2"), "does not say how many"),
        (("size", "fern.toml", "--more", "front=-5"), '"front" has only 5 to lose'),
    ],
)
def test_wrong_usage_is_explained(border: Border, asked: tuple[str, ...], said: str) -> None:
    code, out, err = border(*asked)
    assert (code, out) == (2, "")
    assert err.startswith("border: ")
    assert said in err


def test_what_cannot_be_read_is_told_and_nothing_breaks(border: Border) -> None:
    Path("bad.toml").write_text('format = 1\n[[edge]]\nname = "a"\nplaces = "x"\n')
    Path("text.toml").write_text("format = \n")
    for command in ("flat", "attach", "size"):
        more = ("--more", "a=1") if command == "size" else ()
        assert border(command, "bad.toml", *more)[0] == 1
        assert border(command, "text.toml", *more)[0] == 1
        assert border(command, "none.toml", *more)[0] == 2
        code, out, err = border(command, "bad.toml", *more, "--json")
        assert code == 1
        assert [f["code"] for f in json.loads(out)["findings"]] == ["bad-value"]
        assert err == ""


def test_more_wheels_than_are_reckoned_are_told(border: Border) -> None:
    code, out, _ = border("size", "fern.toml", "--more", "front=9999")
    assert code == 0
    assert "it does not go together so: the yoke has 10023 motifs" in out
    assert "no edge changes" not in out


README = (Path(__file__).parent.parent / "README.md").read_text(encoding="utf-8")


@pytest.mark.parametrize(
    "command",
    [
        "border flat patterns/fern.toml --work neck",
        "border attach patterns/fern.toml",
        "border size patterns/fern.toml --edge hem --length 75cm",
        "border size patterns/fern.toml --more front=1,back=1",
    ],
)
def test_the_manual_shows_what_is_printed(border: Border, command: str) -> None:
    """Line by line, in order; where it says … something is left out."""
    _, out, _ = border(*command.replace("patterns/", "").split()[1:])
    printed = iter(out.splitlines())
    behind = README[README.index(f"    {command}\n") :].splitlines()[1:]
    shown = [line[4:] for line in _until_the_text_goes_on(behind)]
    assert len(shown) > 5
    for line in shown:
        if line.strip() not in ("", "…"):
            assert line in printed, line


def _until_the_text_goes_on(lines: list[str]) -> list[str]:
    end = next(i for i, line in enumerate(lines) if line and not line.startswith("    "))
    return lines[:end]
