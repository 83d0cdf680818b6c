"""Where the keys and values of a TOML file stand in its text.

`tomllib` gives values without their places. This scanner walks a text that
`tomllib` has accepted already, so it checks nothing: it only notes where each
table heading, key and value begins and ends.
"""

from __future__ import annotations

import re
import tomllib
from bisect import bisect_left
from collections.abc import Set
from contextlib import suppress
from typing import TypeAlias

from msgspec import Struct

from border.findings import Span
from border.text.source import Source

Path: TypeAlias = tuple[str | int, ...]
"""The way to a value: keys of tables, and numbers (from 0) in lists."""

_BLANK = re.compile(r"(?:[ \t\r\n]|#[^\n]*)*")
_KEY = re.compile(r"""[A-Za-z0-9_-]+|"(?:[^"\\\n]|\\.)*"|'[^'\n]*'""")
_DOT = re.compile(r"[ \t]*\.[ \t]*")
_STRING = re.compile(
    r'"""(?:[^\\]|\\[\s\S])*?"{3,5}'
    r"|'''[\s\S]*?'{3,5}"
    r'|"(?:[^"\\\n]|\\.)*"'
    r"|'[^'\n]*'"
)
_PLAIN = re.compile(r"[^,\]}#\r\n]*")


class Positions(Struct, frozen=True):
    """The stretches of one file: `keys` of keys and table headings, `values` of values."""

    source: str
    keys: dict[Path, tuple[int, int]]
    values: dict[Path, tuple[int, int]]

    def key(self, path: Path) -> Span:
        """The key at the end of `path`, or the nearest thing around it."""
        return self._nearest(path, self.keys)

    def value(self, path: Path) -> Span:
        """The value at the end of `path`, or the nearest thing around it."""
        return self._nearest(path, self.values)

    def without(self, aside: Set[Path]) -> Positions:
        """The same once some tables of a list (`("work", 1)`) are left aside: those behind
        them move up."""
        gone: dict[str | int, list[int]] = {}
        for name, *number in aside:
            if number and isinstance(number[0], int):
                gone.setdefault(name, []).append(number[0])
        for numbers in gone.values():
            numbers.sort()

        def moved(stretches: dict[Path, tuple[int, int]]) -> dict[Path, tuple[int, int]]:
            found: dict[Path, tuple[int, int]] = {}
            for path, stretch in stretches.items():
                if path[:2] in aside:
                    continue
                if path[0] in gone and len(path) > 1 and isinstance(path[1], int):
                    number = path[1] - bisect_left(gone[path[0]], path[1])
                    path = (path[0], number, *path[2:])
                found[path] = stretch
            return found

        return Positions(self.source, moved(self.keys), moved(self.values))

    def _nearest(self, path: Path, wanted: dict[Path, tuple[int, int]]) -> Span:
        while path:
            found = wanted.get(path) or self.keys.get(path) or self.values.get(path)
            if found:
                return Span(self.source, *found)
            path = path[:-1]
        return Span(self.source, 0, 0)


def positions(source: Source) -> Positions:
    """The positions in a text that `tomllib` accepts (nested too deep: as far as it came)."""
    scanner = _Scanner(source.text)
    with suppress(RecursionError):
        scanner.whole()
    return Positions(source.name, scanner.keys, scanner.values)


class _Scanner:
    def __init__(self, text: str) -> None:
        self.text = text
        self.at = 0
        self.keys: dict[Path, tuple[int, int]] = {}
        self.values: dict[Path, tuple[int, int]] = {}
        self.last: dict[Path, int] = {}  # the last table so far of each list of tables

    def whole(self) -> None:
        table: Path = ()
        self.at = 1 if self.text.startswith("\ufeff") else 0
        while self.blank() < len(self.text):
            if self.text[self.at] == "[":
                table = self.heading()
            else:
                self.key_and_value(table)

    def blank(self) -> int:
        found = _BLANK.match(self.text, self.at)
        self.at = found.end() if found else self.at
        return self.at

    def heading(self) -> Path:
        start = self.at
        brackets = 2 if self.text.startswith("[[", start) else 1
        self.at += brackets
        *parents, name = self.dotted()
        self.blank()
        self.at += brackets
        table: Path = ()
        for parent in parents:
            table = self.inside((*table, parent))
        table = (*table, name)
        if brackets == 2:
            self.last[table] = self.last.get(table, -1) + 1
            self.keys.setdefault(table, (start, self.at))
            table = self.inside(table)
        self.keys[table] = (start, self.at)
        return table

    def inside(self, table: Path) -> Path:
        return (*table, self.last[table]) if table in self.last else table

    def dotted(self) -> list[str]:
        parts = []
        self.blank()
        while found := _KEY.match(self.text, self.at):
            raw = found.group()
            self.at = found.end()
            parts.append(tomllib.loads(f"k = {raw}")["k"] if raw[0] in "\"'" else raw)
            dot = _DOT.match(self.text, self.at)
            if dot is None:
                break
            self.at = dot.end()
        return parts

    def key_and_value(self, table: Path) -> None:
        start = self.at
        parts = self.dotted()
        end = self.at
        if not parts:
            self.at += 1  # not reached on a text that tomllib accepts
            return
        path = table
        for part in parts:
            path = (*path, part)
            self.keys.setdefault(path, (start, end))
        self.blank()
        self.at += 1  # =
        self.value(path)

    def value(self, path: Path) -> None:
        start = self.blank()
        opening = self.text[start : start + 1]
        if opening == "[":
            self.listed(path)
        elif opening == "{":
            self.inline(path)
        elif found := _STRING.match(self.text, start):
            self.at = found.end()
        elif found := _PLAIN.match(self.text, start):
            self.at = start + len(found.group().rstrip())
        self.values[path] = (start, self.at)

    def listed(self, path: Path) -> None:
        self.at += 1
        number = 0
        while self.blank() < len(self.text) and self.text[self.at] != "]":
            self.value((*path, number))
            number += 1
            self.comma()
        self.at += 1

    def inline(self, path: Path) -> None:
        self.at += 1
        while self.blank() < len(self.text) and self.text[self.at] != "}":
            self.key_and_value(path)
            self.comma()
        self.at += 1

    def comma(self) -> None:
        if self.blank() < len(self.text) and self.text[self.at] == ",":
            self.at += 1
