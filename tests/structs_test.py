"""Values do not change once they are made: only what gathers while it works may."""

from __future__ import annotations

import ast
from pathlib import Path

from house_test import HOUSE

GATHER = {
    "border/texts.py": {"Texts"},
    "border/text/nodes.py": {"Building"},
    "border/text/headings.py": {"_Reading"},
    "border/text/rows.py": {"Reader"},
    "border/text/build.py": {"_List"},
    "border/text/copied.py": {"Copies"},
    "border/working/windows.py": {"Window"},
    "border/working/fabric.py": {"Fabric"},
    "border/working/unclosed.py": {"Reasons"},
    "border/working/found.py": {"_Way"},
    "border/working/stations.py": {"Sites"},
    "border/working/rounds.py": {"Pass"},
    "border/working/rows.py": {"Worker"},
    "border/working/cursor.py": {"Made", "Cursor"},
    "border/working/closing.py": {"Account"},
    "border/working/adjusting.py": {"Boundaries"},
    "border/questions/asking.py": {"_Edge"},
    "border/planning/search.py": {"Stuck"},
    "border/planning/trials.py": {"Bench"},
    "border/showing/chart_parts.py": {"Layer"},
}
"""Structs that their own work changes, or that stand for more than they hold."""


def structs(module: Path) -> dict[str, bool]:
    """The structs of a module, and whether they are frozen."""
    found: dict[str, bool] = {}
    for node in ast.walk(ast.parse(module.read_text(encoding="utf-8"))):
        if isinstance(node, ast.ClassDef) and "Struct" in map(ast.unparse, node.bases):
            options = {word.arg: ast.unparse(word.value) for word in node.keywords}
            found[node.name] = options.get("frozen") == "True"
    return found


def test_only_what_gathers_can_be_changed() -> None:
    changing = {
        str(module.relative_to(HOUSE.parent)): names
        for module in HOUSE.rglob("*.py")
        if (names := {name for name, frozen in structs(module).items() if not frozen})
    }
    assert changing == GATHER
