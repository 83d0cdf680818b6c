"""Findings as people read them: place, caret, help, order."""

from __future__ import annotations

from border.findings import Finding
from border.showing.telling import (
    MOST,
    WIDTH,
    harmless,
    in_order,
    summed_up,
    tell,
    tell_all,
    width_of,
)
from border.text.source import Source


def finding(
    source: Source, words: str, code: str = "unknown-word", help_: str | None = None
) -> Finding:
    start = source.text.index(words)
    message = f'"{words}" is not known'
    return Finding(code, message, help_, source.span(start, start + len(words)))


def told(source: Source, words: str, help_: str | None = None) -> list[str]:
    return tell(finding(source, words, help_=help_), {source.name: source}).splitlines()


def under_caret(lines: list[str]) -> str:
    """What stands above the carets, by column of the terminal."""
    line, caret = lines[1], lines[2]
    start, end = caret.index("^"), len(caret)
    return "".join(c for i, c in enumerate(line) if start <= width_of(line[:i]) < end)


def test_a_finding_in_full() -> None:
    source = Source("fern.border", "terms: us\nround 1: 3 dc in nxt space\n")
    assert told(source, "nxt", "did you mean next?") == [
        'fern.border:2:18: error: "nxt" is not known [unknown-word]',
        "    round 1: 3 dc in nxt space",
        "                     ^^^",
        "  help: did you mean next?",
    ]


def test_a_help_of_several_lines_stands_under_itself() -> None:
    source = Source("a.border", "nxt")
    lines = told(source, "nxt", "either\nor")
    assert lines[3:] == ["  help: either", "        or"]


def test_a_finding_without_a_place() -> None:
    text = tell(Finding("edge-needed", "no edge", "give one"), {})
    assert text == "error: no edge [edge-needed]\n  help: give one\n"


def test_a_finding_in_a_file_that_was_not_kept_names_it() -> None:
    far = Source("far.border", "x")
    assert tell(finding(far, "x"), {}).startswith("far.border: error: ")


def test_severities_are_named() -> None:
    source = Source("a.border", "ch 3")
    for code, word in (("passes-more", "warning"), ("meets-its-start", "note")):
        assert f" {word}: " in tell(finding(source, "ch", code), {"a.border": source})


def test_the_caret_keeps_to_its_word_behind_tabs() -> None:
    assert under_caret(told(Source("a", "\tch 3,\tnxt space"), "nxt")) == "nxt"


def test_the_caret_keeps_to_its_word_behind_wide_and_combining_letters() -> None:
    assert under_caret(told(Source("a", "# 編み物 nxt"), "nxt")) == "nxt"
    assert under_caret(told(Source("a", "# cafe\u0301 nxt"), "nxt")) == "nxt"
    lines = told(Source("a", "x 編み y"), "編み")
    assert lines[2] == "      ^^^^"


def test_a_wide_line_is_cut_round_the_caret() -> None:
    source = Source("a", "3 dc, " * 100 + "nxt" + ", 3 dc" * 100)
    lines = told(source, "nxt")
    assert under_caret(lines) == "nxt"
    assert len(lines[1]) <= WIDTH + 4
    assert lines[1].startswith("    ...")
    assert lines[1].endswith("...")


def test_a_very_long_span_is_underlined_as_far_as_it_is_seen() -> None:
    source = Source("a", "x " * 500_000)
    lines = tell(Finding("unknown-word", "m", None, source.span(400_000, 900_000)), {"a": source})
    assert max(map(len, lines.splitlines())) <= WIDTH + 4
    assert "^" in lines


def test_a_span_over_a_line_end_stops_there() -> None:
    source = Source("a", "round 1: ch 3\nround 2: ch 3\n")
    lines = tell(Finding("row-twice", "m", None, source.span(9, 20)), {"a": source}).splitlines()
    assert lines[2] == "             ^^^^"


def test_a_span_at_the_very_end_has_one_caret() -> None:
    source = Source("a", "round 1: *ch 3")
    lines = tell(Finding("star-without-repeat", "m", None, source.span(14, 14)), {"a": source})
    assert lines.splitlines()[2] == "    " + " " * 14 + "^"


def test_an_empty_line_is_not_shown() -> None:
    source = Source("a", "")
    assert tell(Finding("no-rows", "m", None, source.span(0, 0)), {"a": source}) == (
        "a:1:1: error: m [no-rows]\n"
    )


def test_a_users_text_gives_the_terminal_no_orders() -> None:
    nasty = "nxt\x1b[31m\x07\u202edc\x9b"
    source = Source("a\nb.border", f"round 1: {nasty}")
    text = tell(finding(source, nasty), {source.name: source})
    assert not set(text) & set("\x1b\x07\u202e\x9b")
    assert len(text.splitlines()) == 3


def test_harmless_keeps_what_can_be_read() -> None:
    assert harmless("dentelle à l'aiguille 編") == "dentelle à l'aiguille 編"
    assert harmless("a\tb\r\n") == "a\ufffdb\ufffd\ufffd"


def test_colour_is_there_only_when_asked_for() -> None:
    source = Source("a", "  nxt")
    plain = tell(finding(source, "nxt"), {"a": source})
    coloured = tell(finding(source, "nxt"), {"a": source}, colour=True)
    assert "\033" not in plain
    assert "\033[1;31merror:\033[0m" in coloured
    assert "      \033[1;32m^^^\033[0m" in coloured


def test_findings_come_by_file_and_place_and_once() -> None:
    first, second = Source("z.toml", "a b"), Source("a.border", "c d")
    sources = {"z.toml": first, "a.border": second}
    no_place = Finding("edge-needed", "no edge")
    mixed = [
        no_place,
        finding(second, "d"),
        finding(first, "b"),
        finding(second, "c"),
        finding(first, "a"),
        finding(first, "b"),
    ]
    expected = [*(finding(first, w) for w in "ab"), *(finding(second, w) for w in "cd"), no_place]
    assert list(in_order(mixed, sources)) == expected
    assert tell_all(mixed, sources).count(" error: ") == 4


def test_a_flood_is_told_in_part() -> None:
    source = Source("a", "x" * 1000)
    flood = [
        Finding("unknown-word", f"word {i}", None, source.span(i, i + 1)) for i in range(MOST + 7)
    ]
    text = tell_all(flood, {"a": source})
    assert text.count("[unknown-word]") == MOST
    assert text.endswith("... and 7 more, all of them with --json\n")


def test_a_sum_of_findings() -> None:
    source = Source("a", "x y")
    found = [finding(source, "x"), finding(source, "y"), finding(source, "x", "passes-more")]
    assert summed_up(found) == "2 errors, 1 warning"
    assert summed_up([]) == ""
