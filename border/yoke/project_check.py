"""The faults of form of a project file, told in a needleworker's words.

A key written a little wrong is told of and then read as the one meant, and a
faulty piece of work, label, attachment or thread is left aside, so that one
run shows as many faults as there are.
"""

from __future__ import annotations

import re
import tomllib
from difflib import get_close_matches
from typing import Any, get_args

from pydantic import BaseModel, ValidationError

from border.findings import Finding, Span
from border.text.source import Source
from border.yoke.positions import Path, Positions
from border.yoke.project_file import ProjectTable

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
    "round": "round = 5",
    "at": 'at = "left strap"',
    "by": "by = 1",
    "over": 'over = ["front"]',
    "parts": "parts = [{ plain_mm = 60 }]",
    "size": 'size = "40"',
    "tex": "tex = 91",
    "hook_mm": "hook_mm = 1.0",
    "ball_g": "ball_g = 20",
    "waste": "waste = 0.15",
    "stitch": 'stitch = "dc"',
    "stitches": "stitches = 40",
    "used_mm": "used_mm = 960",
}

TABLES = ("yoke", "strip", "motif", "label", "edge", "work", "attach", "thread")
LISTS_OF_TABLES = ("strip", "motif", "label", "edge", "work", "attach")
ASIDE = ("label", "work", "attach", "thread")
"""Tables that say nothing of rings and edges: a faulty one can be left aside."""

_WHERE = re.compile(r"\(at (?:line (\d+), column (\d+)|end of document)\)$")

_TOML_HELP = (
    ("Expected '=' after a key", "a key is followed by = and its value, as in loops = 16"),
    ("Unterminated", "words stand between two quotation marks"),
    ("Illegal character", "words stand between two quotation marks, on one line"),
    ("Invalid value", 'words go in quotation marks, as in name = "Fern yoke"'),
    ("Cannot overwrite", "a key is written twice in one table"),
    ("Cannot declare", "a table is written twice; for one more of a kind use [[two brackets]]"),
    ("Cannot mutate", "a table is written twice"),
    ("Expected newline", "each key stands on a line of its own"),
    ("Unclosed", "a list ends in ] and its parts stand between commas"),
    ("Expected ']", "the head of a table ends in ], that of a list of tables in ]]"),
    ("Invalid initial character", "a key is one word of letters, numbers, _ and -"),
    ("Unescaped", 'write \\\\ for one \\, or put the words between \' and \''),
)


def parsed(source: Source) -> tuple[dict[str, Any] | None, tuple[Finding, ...]]:
    """The values of a TOML text; None, and the finding `not-toml`, where it is none."""
    shift = 1 if source.text.startswith("\ufeff") else 0
    try:
        return tomllib.loads(source.text[shift:]), ()
    except RecursionError:
        message, offset = "lists nested too deep", 0
        help_: str | None = "a ring or a run is a list one deep"
    except ValueError as error:  # also dates and numbers that do not exist
        message = str(error)
        offset = _offset(source, message, shift)
        help_ = next((h for sign, h in _TOML_HELP if message.startswith(sign)), None)
    span = source.span(offset, min(offset + 1, len(source.text)))
    what = "the project file cannot be read from here on"
    return None, (Finding("not-toml", what, help_ or "look for a slip just before", span),)


def _offset(source: Source, message: str, shift: int) -> int:
    found = _WHERE.search(message)
    if found is None:
        return 0
    if found[1] is None:
        return len(source.text.rstrip())
    line, column = int(found[1]), int(found[2])
    start = 0
    for _ in range(line - 1):
        start = source.text.index("\n", start) + 1
    return min(start + column - 1 + (shift if line == 1 else 0), len(source.text))


def checked(
    raw: dict[str, Any], where: Positions
) -> tuple[ProjectTable | None, tuple[Finding, ...]]:
    """The project's tables, and `unknown-key` and `bad-value` for what is wrong in them.

    `raw` is mended on the way. None where the yoke or an edge is faulty.
    """
    findings: dict[tuple[str | int, ...], Finding] = {}
    for _ in range(4):
        try:
            return ProjectTable.model_validate(raw), tuple(findings.values())
        except ValidationError as error:
            errors = error.errors(include_url=False)
        mended = [_mend(raw, e["loc"]) for e in errors if e["type"] == "extra_forbidden"]
        renamed = {new for _, new in mended if new is not None}
        for e in errors:
            if e["loc"] not in renamed:  # missing only because it was misspelt
                findings.setdefault(e["loc"], _finding(dict(e), raw, where))
        for old, new in mended:
            findings[old] = _unknown(old, new, where)
        wrong = [e["loc"] for e in errors if e["type"] != "extra_forbidden"]
        wrong = [loc for loc in wrong if loc not in renamed]
        if not mended and not all(loc and loc[0] in ASIDE for loc in wrong):
            break
        _leave_aside(raw, {loc[:2] for loc in wrong if loc and loc[0] in ASIDE})
    return None, tuple(findings.values())


def _mend(raw: dict[str, Any], loc: Path) -> tuple[Path, Path | None]:
    """Take an unknown key out, or give its value to the key that it is nearest to."""
    table: Any = raw
    for step in loc[:-1]:
        table = table[step]
    known = _keys_of(loc[:-1])
    value = table.pop(loc[-1])
    near = get_close_matches(str(loc[-1]).lower().replace("-", "_"), known, 1, 0.6)
    if near and near[0] not in table:
        table[near[0]] = value
        return loc, (*loc[:-1], near[0])
    return loc, None


def _leave_aside(raw: dict[str, Any], wrong: set[Path]) -> None:
    for path in sorted(wrong, key=lambda p: str(p[0]) + f"{p[-1]:>09}", reverse=True):
        if path[0] not in raw:
            continue
        if len(path) == 2 and isinstance(path[1], int) and isinstance(raw[path[0]], list):
            del raw[path[0]][path[1]]
        else:
            del raw[path[0]]


def _keys_of(path: Path) -> list[str]:
    """The keys that the table at `path` may have."""
    model: type[BaseModel] = ProjectTable
    for step in path:
        if isinstance(step, int):
            continue
        field = next(f for k, f in model.model_fields.items() if (f.alias or k) == step)
        model = _model_in(field.annotation) or model
    return [field.alias or key for key, field in model.model_fields.items()]


def _model_in(annotation: Any) -> type[BaseModel] | None:
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return annotation
    for part in get_args(annotation):
        if found := _model_in(part):
            return found
    return None


def _unknown(loc: Path, mended: Path | None, where: Positions) -> Finding:
    message = f'there is no key "{_cut(str(loc[-1]))}"{_of(loc[:-1])}'
    known = _keys_of(loc[:-1])
    help_ = f'write "{mended[-1]}"' if mended else "the keys here are " + ", ".join(known)
    return Finding("unknown-key", message, help_, where.key(loc))


def _finding(error: dict[str, Any], raw: dict[str, Any], where: Positions) -> Finding:
    loc: Path = error["loc"]
    if error["type"] == "said":
        return Finding("bad-value", error["ctx"]["said"], error["ctx"]["help"], where.value(loc))
    key = next((s for s in reversed(loc) if isinstance(s, str)), "")
    if error["type"] == "missing":
        message = f'"{loc[-1]}" is missing{_of(loc[:-1])}'
        example = EXAMPLES.get(key)
        return Finding("bad-value", message, example and f"write {example}", where.key(loc[:-1]))
    given = error["input"]
    what = f'"{key}"' if isinstance(loc[-1], str) else f'no. {loc[-1] + 1} of "{key}"'
    message = f"{what} must be {_wanted(error)}, not {_shown(given)}"
    return Finding("bad-value", message, _help(error, key, loc, given), where.value(loc))


def _of(table: Path) -> str:
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
            return f"more than {limits['gt']}"
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
            return f'"{_cut(given)}"'
        case list():
            return f"a list of {len(given)}"
        case dict():
            return "a table"
        case _:
            return "a date or a time"


def _cut(words: str) -> str:
    plain = "".join(c if c.isprintable() else "?" for c in words)
    return plain if len(plain) <= 40 else plain[:39] + "…"


def nowhere(where: Positions) -> Span:
    """The head of the file, for what is missing altogether."""
    return where.key(())
