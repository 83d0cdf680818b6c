"""A border text becomes a tree: headings, rows, and one parse for each text of a row."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import lru_cache
from pkgutil import get_data
from typing import TYPE_CHECKING, Any

from border.findings import Finding, Span
from border.text.build import Builder
from border.text.clauses import Part, split_claims, split_clauses
from border.text.copies import copy_at
from border.text.headings import read_headings
from border.text.rowheads import Section, find_heads, find_rows
from border.text.shaping import shape
from border.text.source import Source
from border.text.terminals import Terminal, read_terminals
from border.text.tree import (
    Begin,
    Body,
    Border,
    Claim,
    Clause,
    Copy,
    End,
    Ending,
    Headings,
    Row,
    Text,
)
from border.text.vocabulary import Names, names, vocabulary
from border.text.words import Word, read_words, without_remarks

if TYPE_CHECKING:
    from lark import Lark

DEEPEST = 20
"""Brackets inside brackets."""


def read_border(source: Source) -> tuple[Border | None, tuple[Finding, ...]]:
    """The tree of a border text, and all that is wrong with the text.

    None where there is no row at all. A row that cannot be read is kept as a
    `Row` that is `broken`, so that its number is not missed.
    """
    words, remarks = without_remarks(read_words(source), source)
    findings = list(remarks)
    heads = find_heads(words)
    first = heads[0].at if heads else len(words)
    headings, told = read_headings(words[:first], source)
    findings += told
    if not heads:
        message = "there is no row in this border"
        help_ = 'begin each row with its number: "round 1: …"'
        findings.append(Finding("no-rows", message, help_, source.span(0, 0)))
        return None, tuple(findings)
    sections, told = find_rows(words, heads, source)
    findings += told
    known = names(headings.terms or "us", headings.overrides)
    reader = _RowReader(source, headings, known, findings)
    rows = tuple(reader.row(section) for section in sections)
    return Border(headings, rows, source.span(0, len(source.text))), tuple(findings)


class _RowReader:
    """Reads one row after another under the same headings."""

    def __init__(
        self, source: Source, headings: Headings, known: Names, findings: list[Finding]
    ) -> None:
        self.source, self.headings, self.known, self.findings = source, headings, known, findings
        self.told: set[str] = set()

    def row(self, section: Section) -> Row:
        head = self.source.span(*section.head)
        end = section.body[-1].end if section.body else head.end
        span = self.source.span(head.start, end)
        copy = copy_at(section.body)
        body: Body | None
        if copy is not None:
            body, claims = self._copy(section, head)
        else:
            body, claims = self._body(section, span)
        if body is None:
            return Row(section.numbers, Text((), span=span), claims, head, span, broken=True)
        return Row(section.numbers, body, claims, head, span)

    # --- copies -----------------------------------------------------------------

    def _copy(self, section: Section, head: Span) -> tuple[Body | None, tuple[Claim, ...]]:
        found = copy_at(section.body)
        assert found is not None
        own, behind = section.body[: found.after], section.body[found.after :]
        span = self.source.span(own[0].start, own[-1].end)
        terminals, claims = self._terminals(behind, head, after_text=True)
        ends = []
        for terminal in terminals:
            at = self.source.span(terminal.start, terminal.end)
            if terminal.type == "ENDING":
                ends.append(End(Ending(terminal.name), at))
            elif terminal.type != "SEP":
                help_ = "a row that is a copy says nothing else; write it out to change it"
                message = f'"{terminal.text}" stands behind a copy of rows'
                self.findings.append(Finding("not-understood", message, help_, at))
                return None, claims
        if not found.sound:
            message = "the rounds to be copied cannot be counted out"
            help_ = 'name them upwards, as in "rounds 2-5"'
            self.findings.append(Finding("not-understood", message, help_, span))
            return None, claims
        rows, made = found.rows, len(found.rows) * found.times
        if len(section.numbers) % len(rows) or (found.times > 1 and made != len(section.numbers)):
            message = f"{made} rounds are copied, and the head names {len(section.numbers)}"
            help_ = "name as many rounds at the head as are copied"
            self.findings.append(Finding("copies-uneven", message, help_, head))
        return Copy(rows, found.times, found.file, tuple(ends), span), claims

    # --- texts and clauses ------------------------------------------------------

    def _body(self, section: Section, span: Span) -> tuple[Body | None, tuple[Claim, ...]]:
        parts, told = split_clauses(section.body, self.source)
        self.findings += told
        if len(parts) == 1 and parts[0].scope is None:
            return self._text(parts[0].words, span, row=True)
        clauses: list[Clause] = []
        claims: tuple[Claim, ...] = ()
        broken = False
        for part in parts:
            if part.scope is None:
                self._before_clauses(part)
                broken = True
                continue
            head = self.source.span(*part.head)
            end = part.words[-1].end if part.words else head.end
            whole = self.source.span(head.start, end)
            text, more = self._text(part.words, whole, row=False)
            claims += more
            if text is None:
                broken = True
            else:
                clauses.append(Clause(part.scope, text, head, whole))
        return (None if broken else tuple(clauses)), claims

    def _before_clauses(self, part: Part) -> None:
        message = "these steps stand before the first clause of the row"
        help_ = 'give them a clause of their own, as in "elsewhere: …"'
        span = self.source.span(part.words[0].start, part.words[-1].end)
        self.findings.append(Finding("not-understood", message, help_, span))

    def _terminals(
        self, words: Sequence[Word], span: Span, *, after_text: bool = False
    ) -> tuple[list[Terminal], tuple[Claim, ...]]:
        terminals, told = read_terminals(words, self.known, self.source, self.told)
        self.findings += told
        if after_text:  # a claim is one only behind something to be counted
            before = Terminal("REPEAT", "", span.start, span.start)
            kept, claims = split_claims([before, *terminals], self.source)
            return kept[1:], claims
        return split_claims(terminals, self.source)

    def _text(
        self, words: Sequence[Word], span: Span, *, row: bool
    ) -> tuple[Text | None, tuple[Claim, ...]]:
        terminals, claims = self._terminals(words, span)
        if (deep := _too_deep(terminals)) is not None:
            at = self.source.span(deep.start, deep.end)
            message = f"brackets stand more than {DEEPEST} deep in each other"
            help_ = "write the inner stretches out, or as rows of their own"
            self.findings.append(Finding("nested-too-deep", message, help_, at))
            return None, claims
        shaped, unclear = shape(terminals)
        self.findings += [self._which_number(t) for t in unclear]
        if not any(t.type != "SEP" for t in shaped):
            help_ = 'say what is worked, or "leave unworked"'
            self.findings.append(Finding("not-understood", "nothing is said here", help_, span))
            return None, claims
        tree = self._parsed(shaped, span)
        if tree is None:
            return None, claims
        builder = Builder(self.source, self.headings, row, self.findings)
        text = builder.text(tree, span)
        self._begins_inside(text, row)
        return text, claims

    def _which_number(self, terminal: Terminal) -> Finding:
        span = self.source.span(terminal.start, terminal.end)
        message = f'"{terminal.text}" could go with the word before it or the one behind'
        return Finding("not-understood", message, "put a comma where one step ends", span)

    def _parsed(self, shaped: Sequence[Terminal], span: Span) -> Any:
        from lark.exceptions import UnexpectedInput

        try:
            return _parser().parse(shaped)  # type: ignore[arg-type]
        except UnexpectedInput as error:
            token = getattr(error, "token", None)
            terminal = getattr(token, "value", None)
            self.findings.append(self._unexpected(shaped, terminal, span))
            return None

    def _unexpected(
        self, shaped: Sequence[Terminal], terminal: Terminal | Any, span: Span
    ) -> Finding:
        """In a needleworker's words: what cannot stand here, and what could."""
        if not isinstance(terminal, Terminal):
            before = shaped[-1]
            at = self.source.span(before.start, before.end)
            message = f'something is missing behind "{self._words(before)}"'
        else:
            n = next(i for i, t in enumerate(shaped) if t is terminal)
            before = shaped[n - 1] if n else terminal
            at = self.source.span(terminal.start, terminal.end)
            message = f'"{self._words(terminal)}" cannot stand here'
        if before.type == "LP" or any(t.type == "LP" for t in shaped) != any(
            t.type == "RP" for t in shaped
        ):
            default = "see whether every bracket is closed"
        else:
            default = "put a comma where one step ends, and name the places: in next space"
        help_ = vocabulary().expected.get(before.type, default)
        return Finding("not-understood", message, help_, at)

    def _words(self, terminal: Terminal) -> str:
        return " ".join(self.source.text[terminal.start : terminal.end].split())

    def _begins_inside(self, text: Text, row: bool) -> None:
        for item in _inner_begins(text, row):
            message = "a round is begun in a place here, in the middle of the text"
            if not row:
                message = "a clause cannot begin in a place of its own"
            help_ = "begin in a place only at the head of a row that is one text"
            self.findings.append(Finding("begin-inside", message, help_, item.span))


def _inner_begins(text: Text, row: bool) -> Iterator[Begin]:
    from border.text.steps import walk

    allowed = text.items[0] if row and text.items else None
    for item in walk(text.items):
        if isinstance(item, Begin) and item is not allowed:
            yield item


def _too_deep(terminals: Sequence[Terminal]) -> Terminal | None:
    depth = 0
    for terminal in terminals:
        if terminal.type == "LP":
            depth += 1
            if depth > DEEPEST:
                return terminal
        elif terminal.type == "RP":
            depth -= 1
    return None


@lru_cache(maxsize=1)
def _parser() -> Lark:
    """The parser of one text, made once; it takes shaped terminals instead of characters."""
    from lark import Lark
    from lark.lexer import Lexer, Token

    class Terminals(Lexer):
        def __init__(self, conf: Any) -> None:
            pass

        def lex(self, data: Any) -> Iterator[Token]:  # type: ignore[override]
            for terminal in data:
                yield Token(terminal.type, terminal)

    grammar = get_data("border.grammar", "border.lark")
    assert grammar is not None
    return Lark(
        grammar.decode(), start="text", parser="lalr", lexer=Terminals, maybe_placeholders=False
    )
