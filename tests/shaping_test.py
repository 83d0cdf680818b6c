"""What each pass over a row's words looks for: without it, the words stay as they are."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from border.text.shaping.binding import bind_numbers
from border.text.shaping.passes import PASSES, shape
from border.text.source import Source
from border.text.terminals import Terminal
from border.text.vocabulary import names, vocabulary
from border.text.wording.assumed import SPACES
from border.text.wording.passing import said
from border.text.wording.terminals_read import read_terminals
from border.text.words import read_words

SAID = sorted(
    {" ".join(choices[0][0]) for alike in vocabulary().patterns.values() for choices, _ in alike}
    | {"3", "1", "2nd", "last", "4 times", "twice", ",", ";", "(", ")", "*", "dc", "sl st", "3 ch"}
    | {"in the next", "of the 5 ch", "in each st", "miss 2", "between the", "x", "and", "with"}
)
"""The first of the words for everything that the vocabulary has, and what it does not list."""


def read(text: str) -> list[Terminal]:
    source = Source("a.border", text)
    return read_terminals(read_words(source), names("us"), source, set(), SPACES)[0]


@given(st.lists(st.sampled_from(SAID), max_size=14))
@settings(max_examples=300, deadline=None)
def test_a_pass_leaves_alone_what_has_none_of_its_words(words: list[str]) -> None:
    shaped = read(" ".join(words))
    for pass_, needed in PASSES:
        after = pass_(shaped)
        if any(words.isdisjoint(said(shaped)) for words in needed):
            assert after == shaped, pass_
        shaped = after
    # so it makes no difference that `shape` leaves it out
    assert shape(read(" ".join(words)))[0] == shape_all(read(" ".join(words)))


def shape_all(terminals: list[Terminal]) -> list[Terminal]:
    for pass_, _ in PASSES:
        terminals = pass_(terminals)
    return bind_numbers(terminals)[0]
