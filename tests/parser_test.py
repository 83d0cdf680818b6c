"""The parser's ready-made table is that of the grammar."""

from __future__ import annotations

import json

import pytest
from lark import Lark, __version__
from parser_table import made_table

from border.text.building import parser
from border.text.building.parser import grammar, parse
from border.text.terminals import Terminal


def table() -> dict[str, object]:
    kept = parser._kept()
    assert kept is not None, "make it with: python tests/parser_table.py"
    found = json.loads(kept)
    assert isinstance(found, dict)
    return found


def test_the_table_is_fresh() -> None:
    assert table()["grammar"] == grammar(), "make it anew: python tests/parser_table.py"
    if table()["lark"] == __version__:
        assert table() == json.loads(made_table())


def terminals(*types: str) -> list[Terminal]:
    return [Terminal(type_, type_.lower(), n, n + 1) for n, type_ in enumerate(types)]


TEXTS = (
    ("STAR", "NUM", "STITCH", "PREP", "NEXT", "KIND", "SEP", "REPEAT", "FROMSTAR"),
    ("LP", "NUM", "STITCH", "SEP", "NUM", "CH", "RP", "TIMES", "PREP", "EACH", "KIND"),
    ("NUM", "STITCH", "PREP", "ORD", "KIND", "OF", "EACHOF", "NEXT", "NUM", "KIND"),
    ("NUM", "STITCH", "PREP"),
    ("PREP",),
)


def test_the_kept_table_parses_as_the_grammar_does(monkeypatch: pytest.MonkeyPatch) -> None:
    if table()["lark"] != __version__:
        pytest.skip("the table was made by another lark, and is not used")
    parser._parser.cache_clear()
    made = []
    monkeypatch.setattr(parser, "_made", lambda: made.append(1))
    kept = [parse(terminals(*types)) for types in TEXTS]
    assert not made
    monkeypatch.undo()
    parser._parser.cache_clear()
    monkeypatch.setattr(parser, "_kept", lambda: None)
    assert [parse(terminals(*types)) for types in TEXTS] == kept
    assert kept[3:] == [3, 0]
    parser._parser.cache_clear()


def test_a_table_of_another_lark_or_grammar_is_not_used(monkeypatch: pytest.MonkeyPatch) -> None:
    made = Lark("start: ", parser="lalr")
    monkeypatch.setattr(parser, "_made", lambda: made)
    for key in ("lark", "grammar"):
        for other in ("", "~"):  # before and behind, in the order of letters
            kept = json.dumps({**table(), "lark": __version__, key: other}).encode()
            monkeypatch.setattr(parser, "_kept", lambda kept=kept: kept)
            parser._parser.cache_clear()
            assert parser._parser() is made
    monkeypatch.undo()
    parser._parser.cache_clear()
