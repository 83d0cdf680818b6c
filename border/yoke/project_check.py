"""The faults of form of a project file, told in a needleworker's words.

A key written a little wrong is told of and then read as the one meant, and a
faulty piece of work, label, attachment or thread is left aside, so that one
run shows as many faults as there are.
"""

from __future__ import annotations

import re
import tomllib
from typing import Any, get_args

from pydantic import BaseModel, ValidationError

from border.findings import Finding
from border.text.source import Source
from border.yoke.positions import Path, Positions
from border.yoke.project_file import ProjectTable
from border.yoke.project_words import bad_value, cut, of_table

ASIDE = ("label", "work", "attach", "thread", "costs")
"""Tables that say nothing of rings and edges: a faulty one can be left aside."""

_WHERE = re.compile(r"\(at (?:line (\d+), column (\d+)|end of document)\)$")

_MANY_DOTS = re.compile(
    r"""(?:^|[{,\[])[ \t]*(?:(?:"[^"\n]*"|'[^'\n]*'|[\w-]+)[ \t]*\.[ \t]*){20}""", re.MULTILINE
)
"""A key of more than 20 parts: no project has one, and `tomllib` takes for ever over thousands."""

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
    ("Unescaped", "write \\\\ for one \\, or put the words between ' and '"),
)


def parsed(source: Source) -> tuple[dict[str, Any] | None, tuple[Finding, ...]]:
    """The values of a TOML text; None, and the finding `not-toml`, where it is none."""
    shift = 1 if source.text.startswith("\ufeff") else 0
    help_: str | None
    try:
        if (dotted := _MANY_DOTS.search(source.text)) is None:
            return tomllib.loads(source.text[shift:]), ()
        offset, help_ = dotted.start(), "a key is one word, or two with a point between"
    except RecursionError:
        offset, help_ = 0, "a ring or a run is a list one deep"
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
) -> tuple[ProjectTable | None, Positions, tuple[Finding, ...]]:
    """The project's tables, where they stand, and `unknown-key` and `bad-value` for what is
    wrong in them.

    `raw` is mended on the way. None where the yoke or an edge is faulty.
    """
    findings: dict[tuple[str | int, ...], Finding] = {}
    for _ in range(4):
        try:
            return ProjectTable.model_validate(raw), where, tuple(findings.values())
        except ValidationError as error:
            errors = error.errors(include_url=False)
        mended = [_mend(raw, e["loc"]) for e in errors if e["type"] == "extra_forbidden"]
        renamed = {new for _, new in mended if new is not None}
        for e in errors:
            if e["loc"] not in renamed:  # missing only because it was misspelt
                findings.setdefault(e["loc"], bad_value(dict(e), where))
        for old, new in mended:
            findings[old] = _unknown(old, new, where)
        wrong = [e["loc"] for e in errors if e["type"] != "extra_forbidden"]
        wrong = [loc for loc in wrong if loc not in renamed]
        if not mended and not all(loc and loc[0] in ASIDE for loc in wrong):
            break
        aside = {loc[:2] for loc in wrong if loc and loc[0] in ASIDE}
        _leave_aside(raw, aside)
        where = where.without(aside)
    return None, where, tuple(findings.values())


def _mend(raw: dict[str, Any], loc: Path) -> tuple[Path, Path | None]:
    """Take an unknown key out, or give its value to the key that it is nearest to."""
    from difflib import get_close_matches

    table: Any = raw
    for step in loc[:-1]:
        table = table[step]
    known = _keys_of(loc[:-1])
    value = table.pop(loc[-1])
    near = get_close_matches(str(loc[-1]).lower().replace("-", "_"), known)
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
    message = f'there is no key "{cut(str(loc[-1]))}"{of_table(loc[:-1])}'
    known = _keys_of(loc[:-1])
    help_ = f'write "{mended[-1]}"' if mended else "the keys here are " + ", ".join(known)
    return Finding("unknown-key", message, help_, where.key(loc))
