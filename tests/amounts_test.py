"""Numbers with their nouns."""

from __future__ import annotations

import pytest

from border.text.amounts import in_terms, kinds, some


@pytest.mark.parametrize(
    ("n", "word", "told"),
    [
        (0, "space", "0 spaces"),
        (1, "space", "1 space"),
        (2, "space", "2 spaces"),
        (2, "st", "2 st"),
        (2, "ch", "2 ch"),
        (0, "dc", "0 dc"),
        (2, "hdc", "2 hdc"),
        (2, "stitch", "2 stitches"),
        (1, "group of 3", "1 group of 3"),
        (2, "group of 3", "2 groups of 3"),
        (2, "ch-5 space", "2 ch-5 spaces"),
    ],
)
def test_a_number_with_its_noun(n: int, word: str, told: str) -> None:
    assert some(n, word) == told


def test_kinds_in_the_terms_of_a_text() -> None:
    assert in_terms("3-dc group", "uk") == "3-tr group"
    assert kinds({"space": 2, "dc": 1}, "us") == "2 spaces, 1 dc"
    assert kinds({"dc": 3, "sc": 1}, "uk") == "3 tr, 1 dc"
    assert kinds({}, "us") == ""
