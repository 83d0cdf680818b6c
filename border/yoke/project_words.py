"""The words in which a faulty value of a project file is told of."""

from __future__ import annotations

import re
from typing import Any

from border.findings import Finding
from border.yoke.positions import Path, Positions

EXAMPLES = {
    "format": "format = 1",
    "name": 'name = "front"',
    "hand": 'hand = "left"',
    "loops": "loops = 16",
    "joined": "joined = 3",
    "seam_loops": "seam_loops = 1",
    "of": 'of = "loop"',
    "motif_mm": "motif_mm = 42",
    "motifs": "motifs = 5",
    "sides": 'sides = ["neck 5", "hem 5"]',
    "from": 'from = "front.1"',
    "to": 'to = "back.5"',
    "ring": 'ring = ["neck 5", "join front.2", "hem 5", "join front.4"]',
    "mirror_of": 'mirror_of = "left underarm.1"',
    "closed": "closed = true",
    "section": 'section = "cuff"',
    "places": "places = 6",
    "runs": 'runs = [{ section = "cuff", motifs = 7, places = 6 }]',
    "edge": 'edge = "neck"',
    "border": 'border = "fern.border"',
    "start": 'start = "front.1"',
    "mirror": 'mirror = ["front.3", "back.3"]',
    "done": "done = 3",
    "found": "found = { round = 3, spaces = 71 }",
    "measured": "measured = [{ round = 3, spaces = 10, mm = 58 }]",
    "spaces": "spaces = 10",
    "mm": "mm = 58",
    "curve": 'curve = "in"',
    "turns": "turns = -360",
    "length_mm": "length_mm = 380",
    "corners": "corners = 4",
    "seen": "seen = 1",
    "place": "place = 1000",
    "round": "round = 5",
    "at": 'at = "left strap"',
    "by": "by = 1",
    "over": 'over = ["front"]',
    "parts": "parts = [{ plain_mm = 60 }]",
    "plain_mm": "plain_mm = 60",
    "gathered_mm": "gathered_mm = 90",
    "cloth_mm": "cloth_mm = 140",
    "stitch_mm": "stitch_mm = 2.5",
    "cloth_washed": "cloth_washed = { before_mm = 200, after_mm = 194 }",
    "lace_washed": "lace_washed = { before_mm = 100, after_mm = 97 }",
    "before_mm": "before_mm = 200",
    "after_mm": "after_mm = 194",
    "size": 'size = "40"',
    "tex": "tex = 91",
    "den": "den = 820",
    "nm": "nm = 11",
    "ne": "ne = 6.5",
    "hook_mm": "hook_mm = 1.0",
    "ball_g": "ball_g = 20",
    "ball_m": "ball_m = 220",
    "balls": "balls = 2",
    "waste": "waste = 0.15",
    "stitch": 'stitch = "dc"',
    "stitches": "stitches = 40",
    "used_mm": "used_mm = 690",
    "sample": 'sample = [{ stitch = "dc", stitches = 40, used_mm = 690 }]',
}

TABLES = ("yoke", "strip", "motif", "label", "edge", "work", "attach", "thread", "costs")
LISTS_OF_TABLES = ("strip", "motif", "label", "edge", "work", "attach")


def bad_value(error: dict[str, Any], where: Positions) -> Finding:
    """The finding `bad-value` for one error of a pydantic check."""
    loc: Path = error["loc"]
    if error["type"] == "said":
        return Finding("bad-value", error["ctx"]["said"], error["ctx"]["help"], where.value(loc))
    key = next((s for s in reversed(loc) if isinstance(s, str)), "")
    if error["type"] == "missing":
        message = f'"{loc[-1]}" is missing{of_table(loc[:-1])}'
        example = EXAMPLES.get(key)
        return Finding("bad-value", message, example and f"write {example}", where.key(loc[:-1]))
    given = error["input"]
    what = f'"{key}"' if isinstance(loc[-1], str) else f'no. {loc[-1] + 1} of "{key}"'
    message = f"{what} must be {_wanted(error)}, not {_shown(given)}"
    return Finding("bad-value", message, _help(error, key, loc, given), where.value(loc))


def of_table(table: Path) -> str:
    """In which table something is: ` in [[strip]] no. 2`; nothing at the top."""
    if not table:
        return ""
    names = [s for s in table if isinstance(s, str)]
    if len(names) == 1:
        return f" in {_heading(names[0])}" + _number(table)
    return f" in {names[-1]}{_number(table)}, under {_heading(names[0])}"


def _number(table: Path) -> str:
    return f" no. {table[-1] + 1}" if isinstance(table[-1], int) else ""


def _heading(name: str) -> str:
    return f"[[{name}]]" if name in LISTS_OF_TABLES else f"[{name}]"


def _wanted(error: dict[str, Any]) -> str:
    limits = error.get("ctx", {})
    match error["type"]:
        case "int_type" | "int_from_float":
            return "a whole number"
        case "float_type" | "finite_number":
            return "a number"
        case "string_type":
            return "words in quotation marks"
        case "bool_type":
            return "true or false"
        case "list_type":
            return "a list in [ ]"
        case "model_type" | "model_attributes_type" | "dict_type":
            return "a table with keys of its own"
        case "greater_than_equal":
            return f"{limits['ge']} or more"
        case "greater_than":
            return f"more than {limits['gt']:g}"
        case "less_than_equal":
            return f"{limits['le']} or less"
        case "literal_error":
            return str(limits["expected"]).replace("'", '"')
        case "too_short":
            return f"a list of {limits['min_length']} or more"
        case "too_long":
            return f"a list of {limits['max_length']} or fewer"
        case "string_too_short":
            return "words, and not empty"
        case "string_too_long":
            return f"no longer than {limits['max_length']} letters"
        case _:
            return "something else"


def _help(error: dict[str, Any], key: str, loc: Path, given: Any) -> str | None:
    written = isinstance(loc[-1], str)
    if written and error["type"] in ("int_type", "float_type"):
        plain = given.strip() if isinstance(given, str) else ""
        if re.fullmatch(r"\d{1,7}(\.\d{1,7})?", plain) and (
            error["type"] == "float_type" or plain.isdigit()
        ):
            return f"write {key} = {plain}, without quotation marks"
    if written and error["type"] == "string_type" and type(given) in (int, float):
        return f'write {key} = "{_shown(given)}"'
    if error["type"] in ("model_type", "list_type") and len(loc) <= 2 and loc[0] in TABLES:
        return f"its keys stand under the heading {_heading(str(loc[0]))}"
    if error["type"] == "too_long" and len(loc) == 1:
        return f"see whether a [[{key}]] stands there over and over; or part the project"
    example = EXAMPLES.get(key)
    return f"as in {example}" if example else None


def _shown(given: Any) -> str:
    match given:
        case bool():
            return "true" if given else "false"
        case int() if abs(given) >= 10**12:
            return "a number as large as that"
        case int() | float():
            return str(given)
        case str():
            return f'"{cut(given)}"'
        case list():
            return f"a list of {len(given)}"
        case dict():
            return "a table"
        case _:
            return "a date or a time"


def cut(words: str) -> str:
    """Words of a user, cut to a line and without signs that do not print."""
    plain = "".join(c if c.isprintable() else "?" for c in words)
    return plain if len(plain) <= 40 else plain[:39] + "…"
