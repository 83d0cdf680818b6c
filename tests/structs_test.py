"""Values do not change once they are made: only what gathers while it works may."""

from __future__ import annotations

from importlib import import_module

from house_test import HOUSE
from msgspec import Struct

GATHER = {
    "border.texts": {"Texts"},
    "border.text.nodes": {"Building"},
    "border.text.framing.headings": {"_Reading"},
    "border.text.wording.from_the_hook": {"Head"},
    "border.text.stands_below": {"Unworked"},
    "border.text.shaping.nouns": {"_Nouns"},
    "border.text.vocabulary": {"Way"},
    "border.text.row_texts": {"Reader"},
    "border.text.squares.words": {"SquareRow"},
    "border.text.building.repeats": {"Listed"},
    "border.text.copying.copied": {"Copies"},
    "border.text.copying.changed": {"Changed"},
    "border.text.copying.variations": {"Met", "Variations"},
    "border.working.windows": {"Window", "RowWindow", "StretchWindow", "JointWindow"},
    "border.working.fabric": {"Fabric"},
    "border.working.unclosed": {"Reasons"},
    "border.working.found": {"_Way"},
    "border.working.stations": {"Sites"},
    "border.working.rounds": {"Pass"},
    "border.working.rows": {"Worker"},
    "border.working.cursor": {"Made", "Cursor"},
    "border.working.closing": {"Account"},
    "border.working.adjusting": {"Boundaries"},
    "border.questions.asking": {"_Edge"},
    "border.planning.search": {"Stuck"},
    "border.planning.trials": {"Bench"},
    "border.showing.chart_parts": {"Layer"},
}
"""Structs that their own work changes, or that stand for more than they hold."""


def changing(module: str) -> set[str]:
    """The structs that a module makes whose values can be changed."""
    found = vars(import_module(module)).values()
    structs = (c for c in found if isinstance(c, type) and issubclass(c, Struct))
    own = (c for c in structs if c.__module__ == module)
    return {c.__name__ for c in own if not c.__struct_config__.frozen}


def test_only_what_gathers_can_be_changed() -> None:
    modules = (path.relative_to(HOUSE.parent).with_suffix("") for path in HOUSE.rglob("*.py"))
    names = (".".join(module.parts) for module in modules if module.name[0] != "_")
    assert {name: found for name in names if (found := changing(name))} == GATHER
