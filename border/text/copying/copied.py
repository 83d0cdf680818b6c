"""The text that each row stands for, followed through its copies, into other files too."""

from __future__ import annotations

from collections.abc import Callable

from msgspec import Struct, field

from border.findings import Finding
from border.text.tree import Border, Clause, Copy, End, Row, Text, Worked

Others = Callable[[str, str], Border | None]
"""(the file that copies, the name it gives) -> the border copied from, or None if unreadable."""

Key = tuple[str, int]
"""A row: the name of its file, and its number."""


class Rules(Struct, frozen=True):
    """The headings that bear on the working of a round (None: not stated)."""

    terms: str
    chains_count: bool | None = None
    rows_repeated: bool | None = None
    worked: Worked | None = None


def rules_of(border: Border) -> Rules:
    """The rules under which a border is read, by its headings."""
    h = border.headings
    return Rules(h.terms or "us", h.chains_count, h.rows_repeated, h.worked)


class Resolved(Struct, frozen=True):
    """The text behind a row, the rules it is read under, and the endings of all its copies.

    `copies`: those that have something otherwise, that of the text itself first.
    """

    body: Text | tuple[Clause, ...]
    rules: Rules
    ends: tuple[End, ...]
    copies: tuple[Copy, ...] = ()


class Copies(Struct):
    """Follows copies; each row is followed once."""

    others: Others
    findings: list[Finding]
    _rows: dict[str, dict[int, Row]] = field(default_factory=dict)
    _resolved: dict[Key, Resolved] = field(default_factory=dict)

    def rows(self, border: Border) -> dict[int, Row]:
        """The rows of a border by number, ascending; of two with one number the first."""
        source = border.span.source
        if source not in self._rows:
            pairs = {n: row for row in reversed(border.rows) for n in row.numbers}
            self._rows[source] = dict(sorted(pairs.items()))
        return self._rows[source]

    def resolved(self, border: Border, number: int) -> Resolved | None:
        """What a row stands for; None, with a finding, where that is nothing."""
        trail: dict[Key, Copy] = {}
        while (found := self._resolved.get((border.span.source, number))) is None:
            key = border.span.source, number
            row = self.rows(border).get(number)
            if key in trail or row is None:
                self._fault(border, number, trail, row)
                return None
            if row.broken:
                return None
            if not isinstance(row.body, Copy):
                found = Resolved(row.body, rules_of(border), _ends(row.body))
                self._resolved[key] = found
                break
            copy = trail[key] = row.body
            number = copy.rows[row.numbers.index(number) % len(copy.rows)]
            if copy.file is not None:
                other = self.others(copy.span.source, copy.file)
                if other is None:
                    return None
                border = other
        for key, copy in reversed(trail.items()):
            copies = (*found.copies, copy) if copy.differences else found.copies
            found = Resolved(found.body, found.rules, (*found.ends, *copy.ends), copies)
            self._resolved[key] = found
        return found

    def _fault(self, border: Border, number: int, trail: dict[Key, Copy], row: Row | None) -> None:
        """A copy that comes back to itself, or of a row that is not there."""
        (_, first), copy = next(iter(trail.items()))
        if row is None:
            last = max(self.rows(border), default=0)
            message = f"there is no round {number} to copy"
            help_ = f"this border has rounds 1 to {last}"
            self.findings.append(Finding("no-such-row", message, help_, copy.span))
        else:
            message = f"round {first} is a copy of itself"
            help_ = "write the round out once, and copy that"
            self.findings.append(Finding("copies-itself", message, help_, copy.span))


def _ends(body: Text | tuple[Clause, ...]) -> tuple[End, ...]:
    if isinstance(body, Text):
        return body.ends
    return tuple(end for clause in body for end in clause.text.ends)
