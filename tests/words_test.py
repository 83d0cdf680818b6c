"""Characters become words, and words the terminals of the vocabulary."""

from __future__ import annotations

import pytest
from reading import faults, read, row_faults

from border.text.numbers import number_at, ordinal_at, row_list_at
from border.text.source import Source
from border.text.syntax import read_border
from border.text.vocabulary import TERMS, has_name, name_of, names, phrases_from, vocabulary
from border.text.words import LARGEST, Sort, read_words, shortened, without_remarks


def texts(source: str) -> list[str]:
    return [word.text for word in read_words(Source("t", source))]


@pytest.mark.parametrize(
    ("source", "words"),
    [
        ("2 dc, ch 3;", ["2", "dc", ",", "ch", "3", ";"]),
        ("2dc ch3", ["2", "dc", "ch", "3"]),
        ("CH 3\tDC", ["ch", "3", "dc"]),
        ("ch\u00a03\u200b dc", ["ch", "3", "dc"]),
        ("\ufeffch 3", ["ch", "3"]),
        ("3 ch # and so on; 2 dc\n1 dc", ["3", "ch", "1", "dc"]),
        ("d.c. s.c.", ["dc", ".", "sc", "."]),
        ("1st 2nd 2d 3rd 21st 12th", ["1st", "2nd", "2d", "3rd", "21st", "12th"]),
        ("3st 2dc", ["3", "st", "2", "dc"]),
        ("row\u2014 row-- row - x", ["row", "\u2014", "row", "--", "row", "-", "x"]),
        ("[*]", ["[", "*", "]"]),
        ("needleworker\u2019s", ["needleworker's"]),
        ("miss \u00bc, 1/4 or 1\u00bd", ["miss", "1/4", ",", "1/4", "or", "1", "1/2"]),
    ],
)
def test_words(source: str, words: list[str]) -> None:
    assert texts(source) == words


def test_words_know_where_they_stand() -> None:
    source = "ch-5 space,\r\n  2 dc"
    words = read_words(Source("t", source))
    assert [source[w.start : w.end] for w in words] == ["ch", "5", "space", ",", "2", "dc"]
    assert [w.glued for w in words] == [False, True, False, False, False, False]
    assert [w.line for w in words] == [0, 0, 0, 0, 1, 1]


def test_quoted_names_keep_their_capitals() -> None:
    (word,) = read_words(Source("t", '"My cuff #2.border"'))
    assert (word.sort, word.text) == (Sort.QUOTED, "My cuff #2.border")
    (curly,) = read_words(Source("t", "\u201cMy cuff\u201d"))
    assert (curly.sort, curly.text) == (Sort.QUOTED, "My cuff")


@pytest.mark.parametrize(
    ("word", "near"),
    [("nxt", "next"), ("trebel", "treble"), ("treebles", "trebles"), ("stich", "stitch"), ("loopes", "loops")],
)  # fmt: skip
def test_an_unknown_word_is_told_with_the_one_most_like_it(word: str, near: str) -> None:
    _, (finding,) = read(f"terms: us\nround 1: 1 dc in {word} st")
    assert finding.help is not None
    assert finding.help.startswith(f'did you mean "{near}"? ')


def test_figures_of_any_length_are_read() -> None:
    (word,) = read_words(Source("t", "9" * 10_000))
    assert word.number == LARGEST + 1
    (word,) = read_words(Source("t", str(LARGEST + 5)))
    assert word.number == LARGEST + 1
    assert row_faults(f"{LARGEST} ch") == []
    assert row_faults(f"{LARGEST + 1} ch") == [("too-large", str(LARGEST + 1))]


def test_remarks() -> None:
    source = Source("t", "2 dc -- the petals -- ch 3")
    kept, findings = without_remarks(read_words(source), source)
    assert [word.text for word in kept] == ["2", "dc", "ch", "3"]
    assert findings == ()


STEPS_APART = {
    "2 dc--2 ch--2 dc in next st": "2 ch",
    "1 dc in next st, ch 1--repeat to end--then turn": "repeat to end",
    "5 dc in next st--skip 2--1 sc in next st": "skip 2",
}
REMARKS = (
    "2 dc in next st -- the point, where 9 dc meet -- ch 3",
    "2 dc in next st--to be worked loosely--ch 3",
    "-- Chain 18 -- 1 dc in each st",
    "2 dc in next st -- the 3 sts -- ch 3",
)


@pytest.mark.parametrize(("row", "said"), STEPS_APART.items())
def test_steps_between_dashes_are_no_remark(row: str, said: str) -> None:
    assert ("not-understood", f"--{said}--") in row_faults(row)


@pytest.mark.parametrize(("row", "said"), STEPS_APART.items())
def test_a_remark_of_steps_is_told(row: str, said: str) -> None:
    blanks = row.replace("--", " -- ")
    assert ("perhaps-worked", f"-- {said} --") in row_faults(blanks)
    assert "perhaps-worked" not in dict(row_faults(row.replace("--", " \u2014 ")))


@pytest.mark.parametrize("row", REMARKS)
def test_a_remark_in_words_is_not_told(row: str) -> None:
    assert row_faults(row) == []


def test_a_remark_never_closed_swallows_nothing() -> None:
    source = Source("t", "2 dc -- ch 3")
    kept, (finding,) = without_remarks(read_words(source), source)
    assert [word.text for word in kept] == ["2", "dc", "ch", "3"]
    assert finding.code == "not-understood"


@pytest.mark.parametrize(
    ("words", "number"),
    [
        ("3", 3),
        ("a", 1),
        ("one", 1),
        ("twelve", 12),
        ("twenty four", 24),
        ("twenty-four", 24),
        ("hundred", 100),
        ("a hundred", 100),
        ("two hundred and five", 205),
        ("three hundred forty-two", 342),
    ],
)
def test_numbers_in_words(words: str, number: int) -> None:
    found = read_words(Source("t", words))
    assert number_at(found, 0) == (number, len(found))


def test_a_number_ends_where_the_next_begins() -> None:
    assert number_at(read_words(Source("t", "twenty a")), 0) == (20, 1)
    assert number_at(read_words(Source("t", "two and three")), 0) == (2, 1)
    assert number_at(read_words(Source("t", "dc")), 0) is None


@pytest.mark.parametrize(
    ("words", "ordinal"), [("2nd", 2), ("third", 3), ("last", -1), ("twenty-first", 21), ("2d", 2)]
)
def test_ordinals(words: str, ordinal: int) -> None:
    found = read_words(Source("t", words))
    assert ordinal_at(found, 0) == (ordinal, len(found))


@pytest.mark.parametrize(
    ("words", "numbers"),
    [
        ("round 2", (2,)),
        ("rounds 2-5", (2, 3, 4, 5)),
        ("rounds 2 to 4", (2, 3, 4)),
        ("2nd row and 3rd row", (2, 3)),
        ("5th, 6th, and 7th rows", (5, 6, 7)),
        ("3rd to 5th rows", (3, 4, 5)),
        ("rounds 1, 3-4 and 6", (1, 3, 4, 6)),
        ("round one", (1,)),
    ],
)
def test_lists_of_rows(words: str, numbers: tuple[int, ...]) -> None:
    listed = row_list_at(read_words(Source("t", words)), 0)
    assert listed is not None
    assert (listed.numbers, listed.named, listed.sound) == (numbers, True, True)


def test_lists_of_rows_that_cannot_be_counted_out() -> None:
    for words in ("rounds 5-2", "rounds 0-2", "rounds 1-99999999", "round 0"):
        listed = row_list_at(read_words(Source("t", words)), 0)
        assert listed is not None
        assert not listed.sound, words


def test_every_stitch_is_written_as_it_is_read_in_all_terms() -> None:
    for terms in TERMS:
        known = names(terms).known
        for stitch in vocabulary().stitches:
            if has_name(stitch, terms):
                assert known[tuple(name_of(stitch, terms).split())] == stitch
    assert [s for s in vocabulary().stitches if not has_name(s, "early")] == ["hdc", "trtr"]


def test_no_word_begins_more_phrases_than_are_spelled_out_in_no_time() -> None:
    """A pattern of many choices stands for all their products, spelled out when a text has its word.

    Where this fails, part such a pattern: its first half mostly means nothing.
    """
    assert max(len(phrases_from(word)) for word in vocabulary().patterns) < 500


# --- strange words ----------------------------------------------------------------


def test_a_strange_word_is_told_with_the_nearest_known_one() -> None:
    _, (finding,) = read("terms: us\nround 1: 3 dc in next spaec\n")
    assert (finding.code, finding.round) == ("unknown-word", 1)
    assert finding.help is not None
    assert 'did you mean "space"?' in finding.help
    assert '"-- spaec --"' in finding.help


def test_a_word_known_only_in_phrases_is_not_its_own_nearest() -> None:
    _, (finding,) = read("terms: us\nround 1: 1 dc in next st, before\n")
    assert (finding.code, finding.help) == (
        "unknown-word",
        'set a remark apart: "-- before --", or put it behind a #',
    )


def test_each_strange_word_is_one_finding() -> None:
    assert row_faults("3 dcc in next st, ch 3, ch 1, ch 1, 1 bobble in next st") == [
        ("unknown-word", "dcc"),
        ("unknown-word", "bobble"),
    ]


def test_a_run_of_strange_words_is_one_finding() -> None:
    assert row_faults("ch 3, this makes the pretty scallops; 1 dc in next st") == [
        ("unknown-word", "this makes the pretty scallops")
    ]


def test_strange_characters_are_told() -> None:
    assert row_faults("2 dc \0 in next st") == [("unknown-word", "\0")]
    assert row_faults("2 dc \u263a in next st") == [("unknown-word", "\u263a")]


def test_terms_that_do_not_have_a_word() -> None:
    assert row_faults("2 long trebles in next st, 3 long trebles") == [
        ("term-unknown-here", "long trebles"),
    ]
    assert row_faults("2 htr in next st") == [("term-unknown-here", "htr")]
    assert row_faults("1 sc in next st", "terms: uk") == [("term-unknown-here", "sc")]
    assert row_faults("1 dtr in next st", "terms: early") == [("term-unknown-here", "dtr")]


def test_the_override_in_the_help_settles_it() -> None:
    _, (finding,) = read("terms: us\nround 1: 2 long treble in next st\n")
    assert finding.help is not None
    assert '"long treble means dtr"' in finding.help
    assert row_faults("2 long trebles in next st", "terms: us\nlong treble means dtr") == []


def test_the_short_name_of_an_overridden_one_is_asked() -> None:
    headings = "terms: us\ntreble means dc"
    assert row_faults("2 trebles in next st, 1 treble crochet in next st", headings) == []
    assert row_faults("2 tr in next st", headings) == [("term-unknown-here", "tr")]
    assert row_faults("2 tr in next st", f"{headings}\ntr means dc") == []
    assert row_faults("2 tr in next st", f"{headings}\ntr means tr") == []


def test_messages_quote_no_more_than_can_be_read() -> None:
    assert shortened("one two") == "one two"
    assert shortened("one\n  two") == "one two"
    assert shortened("word " * 10_000) == "word " * 7 + "…"
    for steps in ("x" * 5000, "9" * 5000, "foo " * 5000):
        _, findings = read(f"terms: us\nround 1: {steps}\n")
        assert findings
        assert max(len(f.message) for f in findings) < 200
    assert faults("terms: " + "x" * 5000)[0][0] == "bad-heading"


def test_a_strange_word_at_the_head_of_a_line_may_begin_a_row() -> None:
    rows = "terms: us\nround 1: 1 dc in each loop.\n  Lower edge thereof, 1 sc in each dc.\n"
    _, told = read_border(Source("a.border", rows))
    strange = [one.help or "" for one in told if one.code == "unknown-word"]
    assert strange
    assert all('write its number first: "round 2:"' in help_ for help_ in strange)
    _, told = read_border(Source("a.border", "terms: us\nround 1: thereof 1 dc in each loop.\n"))
    assert all("write its number first" not in (one.help or "") for one in told)
