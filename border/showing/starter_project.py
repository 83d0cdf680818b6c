"""The project that `border new` writes: the yoke as it was told, with what its lines mean."""

from __future__ import annotations

from textwrap import fill
from typing import Any

from border.yoke.answers import Said, numbers, word
from border.yoke.shapes import SHAPES

_HEAD = """\
{about}

format = 1
name = {name}
hand = {hand:<13} # the hand that works: right or left
"""

_WHEEL = """
[yoke]
loops = {loops:<12} # loops round one wheel
joined = {joined:<11} # of these, the loops that one joint takes up
seam_loops = {seam:<7} # of those, at each end of a joint, those free for the edge beside
{across}
"""

_YOKE = """

# --- the strips -----

# {free_sum}
[[strip]]
name = "front"       # front.1 is by the left strap
motifs = {front}
sides = ["neck {free[0]}", "hem {free[1]}"]

[[strip]]
name = "back"        # back.1 is by the right strap
motifs = {back}
sides = ["neck {free[0]}", "hem {free[1]}"]

# {strap_free_sum}
[[strip]]
name = "left strap"
motifs = {strap}
sides = ["left armhole {strap_free[1]}", "neck {strap_free[0]}"]
from = "front.1"
to = "back.{back}"

[[strip]]
name = "right strap"
motifs = {strap}
sides = ["neck {strap_free[0]}", "right armhole {strap_free[1]}"]
from = "front.{front}"
to = "back.1"

# {underarm_free_sum}
[[strip]]
name = "left underarm"
motifs = {underarm}
sides = ["hem {underarm_free[1]}", "left armhole {underarm_free[0]}"]
from = "front.1"
to = "back.{back}"

[[strip]]
name = "right underarm"
motifs = {underarm}
sides = ["right armhole {underarm_free[0]}", "hem {underarm_free[1]}"]
from = "front.{front}"
to = "back.1"


# --- the corners, where a strap and an underarm are joined side by side -----

# {corner_free_sum}
[[motif]]
name = "front.1"
ring = ["neck {corner_free[0]}", "join front.2", "hem {corner_free[1]}", \
"join left underarm.1", "left armhole {corner_free[2]}", "join left strap.1"]

[[motif]]
name = "back.{back}"
ring = ["neck {corner_free[0]}", "join left strap.{strap}", "left armhole {corner_free[2]}", \
"join left underarm.{underarm}", "hem {corner_free[1]}", "join back.{before}"]

[[motif]]
name = "front.{front}"
mirror_of = "front.1"

[[motif]]
name = "back.1"
mirror_of = "back.{back}"


# --- more names, so that a border can say "over corner: …" -----

[[label]]
name = "corner"
motifs = ["front.1", "front.{front}", "back.1", "back.{back}"]

[[label]]
name = "underarm"
motifs = {underarms}
"""

_RING = """
# {free_sum}
[[strip]]
name = "{shape}"
motifs = {wheels}
sides = ["{sides[0]} {free[0]}", "{sides[1]} {free[1]}"]
from = "{shape}.{wheels}"     # the last wheel is joined to the first
to = "{shape}.1"
"""

_STRIP = """
# Each wheel: {free_sum}
# The first and the last have no joint at their outer end.

[[edge]]
name = "{shape}"
closed = false       # it has two ends, and is worked to and fro
# of each wheel {places_sum}
runs = [{{ section = "{shape}", motifs = {wheels}, places = {places} }}]
"""

_WORKS = """

# --- the work: a border on every edge -----
"""

_WORK = """
[[work]]
edge = "{edge}"
border = "{shape}.border"
"""

_THREAD = """

# --- the thread: put in your own -----

[thread]
size = "40"          # the number on the ball
hook_mm = 1.0
ball_g = 20
"""

_ABOUT = {
    "yoke": "A chemise yoke of wheels. Left and right are the wearer's; strips and rings are "
    "written as one meets them with the right side facing, counter-clockwise round a wheel.",
    "collar": "A round collar of wheels, each joined to the next, and the last to the first.",
    "cuff": "A cuff of wheels, each joined to the next, and the last to the first.",
    "strip": "A strip of wheels, each joined to the next, bordered along one side.",
}

_LEFT = "It is all written as for the right hand; the left one works every edge the other way."


def project_text(said: Said) -> str:
    """The project of these answers, as TOML; its border is the file `SHAPE.border`."""
    name = word(said, "shape")
    rows = SHAPES[name].free_loops[0].sides
    body, edges = {
        "yoke": (_YOKE, ("neck", "left armhole", "right armhole", "hem")),
        "strip": (_STRIP, (name,)),
    }.get(name, (_RING, rows))
    values = _values(said)
    text = "".join(part.format(**values) for part in (_HEAD, _WHEEL, body))
    text += _WORKS + "".join(_WORK.format(edge=edge, shape=name) for edge in edges)
    return text + _THREAD


def quoted(text: str) -> str:
    """A text without control characters, as TOML has it."""
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'


def _values(said: Said) -> dict[str, Any]:
    """What the texts have gaps for: the answers by their keys, their sums, what follows."""
    shape = SHAPES[word(said, "shape")]
    values: dict[str, Any] = {}
    for question in shape.questions:
        given = said[question.key]
        values[question.key] = given[0] if isinstance(given, tuple) and len(given) == 1 else given
    for free in shape.free_loops:
        values[f"{free.key}_sum"] = free.shown(numbers(said, free.key), said)
    left = word(said, "hand") == "left"
    about = f"{_ABOUT[shape.name]} {_LEFT if left else ''}"
    return values | {
        "shape": shape.name,
        "about": fill(about, 88, initial_indent="# ", subsequent_indent="# "),
        "name": quoted(word(said, "name")),
        "hand": quoted(word(said, "hand")),
        "sides": shape.free_loops[0].sides,
        "across": _across(values["across"]),
        **(_of_yoke(values) if shape.name == "yoke" else {}),
        **(_of_strip(values) if shape.name == "strip" else {}),
    }


def _across(measured: str) -> str:
    if measured:
        return f"motif_mm = {measured:<9} # across one wheel, in mm"
    return "# motif_mm = 42      # across one wheel, in mm: when it is measured"


def _of_yoke(values: dict[str, Any]) -> dict[str, Any]:
    under = [
        f'"{side} underarm.{n}"'
        for side in ("left", "right")
        for n in range(1, values["underarm"] + 1)
    ]
    listed = f"[{', '.join(under)}]"
    if len(listed) > 80:
        listed = "[\n" + "".join(f"    {name},\n" for name in under) + "]"
    return {"before": values["back"] - 1, "underarms": listed}


def _of_strip(values: dict[str, Any]) -> dict[str, Any]:
    free, seam = values["free"][0], values["seam"]
    told = f"{free} free and {seam} more at each end" if seam else f"{free} free"
    return {"places": free + 2 * seam, "places_sum": told}
