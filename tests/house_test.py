"""The house: floors import one way, and only the command line touches the world."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from fnmatch import fnmatchcase
from graphlib import TopologicalSorter
from pathlib import Path

import pytest

HOUSE = Path(__file__).parent.parent / "border"

FLOORS = (
    ("findings", "stitches"),
    ("text",),
    ("yoke",),
    ("working",),
    ("questions",),
    ("planning",),
    ("reckoning",),
    ("writing",),
    ("showing",),
    (
        "texts",
        "wanted",
        "pipeline",
        "needing",
        "easing",
        "choosing",
        "charting",
        "writing_down",
        "lying",
        "sewing",
        "resizing",
        "unwinding",
        "starting",
    ),
    ("option_values", "arguments", "examples", "asking", "cli"),
    ("calling",),
    ("__init__", "__main__"),
)
"""From the top: a module imports from its own floor and those before it."""

ROOMS = ("wording", "framing", "shaping", "doubting", "building", "copying", "squares")
"""The rooms of the text floor, in the order in which a text passes them."""

LEVEL = {room: level for level, rooms in enumerate(FLOORS) for room in rooms}

WORLD = {
    "asyncio",
    "builtins",
    "datetime",
    "getpass",
    "glob",
    "io",
    "locale",
    "logging",
    "multiprocessing",
    "os",
    "platform",
    "random",
    "secrets",
    "shutil",
    "signal",
    "socket",
    "subprocess",
    "sys",
    "tempfile",
    "threading",
    "time",
    "urllib",
    "uuid",
}
"""Modules of the standard library that read a clock, chance, the machine, or write to it."""

ALLOWED = {
    ("sys", "version_info"),
    ("pathlib", "PurePosixPath"),
    ("pathlib", "PurePath"),
    ("os", "PathLike"),
    ("os", "fspath"),
}
ACTS = {"open", "print", "input", "exit", "quit", "exec", "eval", "breakpoint", "SystemExit"}
FILE_METHODS = {"write_text", "write_bytes", "unlink", "mkdir", "rename"}


def modules() -> list[Path]:
    return sorted(HOUSE.rglob("*.py"))


def room_of(module: Path) -> str:
    return module.relative_to(HOUSE).with_suffix("").parts[0]


def imported(tree: ast.AST) -> Iterator[str]:
    """Every module imported anywhere in a file, inside functions as well."""
    for node in ast.walk(tree):
        match node:
            case ast.Import(names=names):
                yield from (alias.name for alias in names)
            case ast.ImportFrom(module=str(module), level=0, names=names):
                yield module
                if module == "border":
                    yield from (f"border.{a.name}" for a in names if a.name != "__version__")
            case ast.ImportFrom(level=level) if level:
                yield "a relative import"


def wrong_way(room: str, source: str, within: str = "") -> list[str]:
    """The imports in a module of `room` that go to a floor below it, or outside the house.

    `within`: the room of the text floor in which it stands, if it stands in one.
    """
    wrong = []
    for name in imported(ast.parse(source)):
        parts = name.split(".")
        if name == "a relative import":
            wrong.append(name)
        elif parts[0] == "border" and len(parts) > 1 and parts[1] != "grammar":
            if LEVEL.get(parts[1], len(FLOORS)) > LEVEL[room] or (
                within and name.startswith("border.text.") and is_further_on(parts[2], within)
            ):
                wrong.append(name)
        elif parts[0] == "tests":
            wrong.append(name)
    return wrong


def is_further_on(room: str, within: str) -> bool:
    """Whether a room of the text floor comes behind the one in which a module stands."""
    return room in ROOMS and ROOMS.index(room) > ROOMS.index(within)


def touches(source: str) -> list[str]:
    """What a module does with the world outside it."""
    tree = ast.parse(source)
    package_data = any(n.startswith("importlib.resources") for n in imported(tree))
    found = []
    for node in ast.walk(tree):
        match node:
            case ast.Import(names=names):
                only_version = uses_only_version(tree)
                found += [
                    a.name
                    for a in names
                    if (root := a.name.split(".")[0]) in WORLD | {"pathlib"}
                    and not (root == "sys" and only_version)
                ]
            case ast.ImportFrom(module=str(module), names=names):
                root = module.split(".")[0]
                if root in WORLD | {"pathlib"}:
                    found += [f"{module}.{a.name}" for a in names if (root, a.name) not in ALLOWED]
            case ast.Name(id=name) if name in ACTS:
                found.append(name)
            case ast.Attribute(attr=attr) if attr in FILE_METHODS:
                found.append(attr)
            case ast.Attribute(attr="read_text" | "read_bytes" | "open") if not package_data:
                found.append("read")
    return found


def uses_only_version(tree: ast.AST) -> bool:
    used = [
        node.attr
        for node in ast.walk(tree)
        if isinstance(node, ast.Attribute)
        and isinstance(node.value, ast.Name)
        and node.value.id == "sys"
    ]
    return set(used) <= {"version_info"}


@pytest.mark.parametrize("module", modules(), ids=lambda p: str(p.relative_to(HOUSE)))
def test_a_floor_imports_only_from_floors_above_it(module: Path) -> None:
    within = module.parent.name if module.parent.parent.name == "text" else ""
    assert wrong_way(room_of(module), module.read_text(), within) == []


def test_no_modules_of_the_text_floor_import_each_other_in_a_ring() -> None:
    needs = {}
    for module in (HOUSE / "text").rglob("*.py"):
        name = ".".join(module.relative_to(HOUSE.parent).with_suffix("").parts)
        needs[name] = set(imported(ast.parse(module.read_text())))
    assert "border.text.tree" in TopologicalSorter(needs).static_order()


@pytest.mark.parametrize("module", modules(), ids=lambda p: str(p.relative_to(HOUSE)))
def test_only_the_command_line_touches_the_world(module: Path) -> None:
    if room_of(module) in ("cli", "__main__"):
        return
    assert touches(module.read_text()) == []


def test_every_floor_is_there() -> None:
    rooms = {room_of(m) for m in modules()}
    assert rooms == set(LEVEL)


def drawn(page: str) -> dict[str, set[str]]:
    """The files that the drawing of the house names, by room ("" is the landing): as patterns."""
    house = page[page.index("    border/\n") : page.index("    grammar/ ")]
    rooms: dict[str, set[str]] = {"": set()}
    room = ""
    for line in house.splitlines()[1:]:
        if entry := re.match(r"(  +)(\w+)/ ", line):
            room = entry[2] if len(entry[1]) == 6 else f"{room.split('/')[0]}/{entry[2]}"
            rooms[room] = set()
        elif re.match(r"      \S", line):
            room = ""
        rooms[room] |= set(re.findall(r"[\w*]+\.(?:py|css|js)\b", line))
    return {room: files for room, files in rooms.items() if files}


def test_the_house_is_drawn_as_it_is() -> None:
    """Every module stands in its room of the drawing, and nothing else does."""
    rooms = drawn((HOUSE.parent / "DEVELOPERS.md").read_text(encoding="utf-8"))
    there: dict[str, set[str]] = {}
    for path in HOUSE.rglob("*"):
        if path.suffix in (".py", ".css", ".js"):
            room = path.parent.relative_to(HOUSE).as_posix()
            if room == "." or path.name != "__init__.py":
                there.setdefault("" if room == "." else room, set()).add(path.name)
    assert rooms.keys() == there.keys()
    for room, names in there.items():
        patterns = rooms[room]
        assert [n for n in names if not any(fnmatchcase(n, p) for p in patterns)] == [], room
        assert [p for p in patterns if not any(fnmatchcase(n, p) for n in names)] == [], room


@pytest.mark.parametrize("module", modules(), ids=lambda p: str(p.relative_to(HOUSE)))
def test_modules_and_what_is_public_in_them_say_what_they_are_for(module: Path) -> None:
    tree = ast.parse(module.read_text(encoding="utf-8"))
    assert ast.get_docstring(tree)
    public = (ast.FunctionDef, ast.ClassDef)
    defined = [n for n in tree.body if isinstance(n, public) and not n.name.startswith("_")]
    assert [n.name for n in defined if not ast.get_docstring(n)] == []


@pytest.mark.parametrize(
    "source",
    [
        "from border.cli import main",
        "import border.pipeline",
        "from border import showing",
        "def f():\n    from border.showing.tables import count_tables",
        "from ..pipeline import Pipeline",
        "from border.attic import something",
    ],
)
def test_an_import_the_wrong_way_is_seen(source: str) -> None:
    assert wrong_way("reckoning", source)
    assert not wrong_way("reckoning", "from border.working.work import work")


def test_an_import_the_wrong_way_within_the_text_floor_is_seen() -> None:
    assert wrong_way("text", "from border.text.building.lists import settled_list", "shaping")
    assert not wrong_way("text", "from border.text.wording.passing import types", "shaping")
    assert not wrong_way("text", "from border.text.building.lists import settled_list")


@pytest.mark.parametrize(
    "source",
    [
        "print(1)",
        "open('x')",
        "import time",
        "from os import environ",
        "import os.path",
        "from pathlib import Path",
        "import sys\nsys.exit(1)",
        "raise SystemExit(1)",
        "def f(p):\n    return p.read_text()",
    ],
)
def test_a_touch_of_the_world_is_seen(source: str) -> None:
    assert touches(source)
