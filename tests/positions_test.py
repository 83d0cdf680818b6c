"""Where the values of a TOML file stand in its text."""

from __future__ import annotations

import tomllib
from typing import Any

import pytest
from yokes import EVERYTHING, FERN

from border.text.source import Source
from border.yoke.positions import positions

TRICKY = r'''
"quoted key" = 'its' # no: a comment
a.b . "c d" = { x = [1, 2, { y = "}" }], z = "#]" }   # "x"
long = QQQ
[[not a table]] x = 1
QQQ
deep = QQQtwo 'quotes' at the endQQQ''
more = """[x] = \""" \\"""
when = 1979-05-27 07:32:00
[[t]]
n = +1_000
[[t.u]]
m = [ # here
  "é", # there
]
[[t.u]]
m = 0x1F
[t.v]
w = true
[[t]]
n = 2
[[t.u]]
m = -inf
'''.replace("QQQ", 3 * "'")


def leaves(value: Any, path: tuple[str | int, ...] = ()) -> Any:
    if isinstance(value, dict):
        for key, inner in value.items():
            yield from leaves(inner, (*path, key))
    elif isinstance(value, list):
        for n, inner in enumerate(value):
            yield from leaves(inner, (*path, n))
    else:
        yield path, value


@pytest.mark.parametrize("text", [FERN, EVERYTHING, TRICKY, TRICKY.replace("\n", "\r\n")])
def test_every_value_is_found_where_it_stands(text: str) -> None:
    at = positions(Source("x", text))
    number = 0
    for path, value in leaves(tomllib.loads(text)):
        span = at.value(path)
        assert tomllib.loads("v = " + text[span.start : span.end])["v"] == value, path
        number += 1
    assert number >= 12
