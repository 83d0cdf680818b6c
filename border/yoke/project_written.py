"""Adjustments written into a project file, with every other character of it left as it is."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from border.text.source import Source
from border.yoke.positions import Path, Positions, positions
from border.yoke.project import Adjust, read_project


def with_adjustments(
    source: Source, added: Mapping[int, Sequence[tuple[int, str, int]]]
) -> str | None:
    """The text of a project with adjustments (round, at, by) added to some of its works.

    `added`: by the number of the work in the project as it is read, from 0. None where
    the file is written in such a way that they could not be put in for certain.
    """
    where, text = positions(source), source.text
    paths = _works(source, where)
    edits = []
    for number, new in added.items():
        path = paths[number] if number < len(paths) else None
        if path is None:
            return None
        if new:
            edits.append(_edit(text, where, path, new))
    for at, what in sorted(edits, reverse=True):
        text = text[:at] + what + text[at:]
    return text if _says(source, Source(source.name, text), added) else None


def _works(source: Source, where: Positions) -> list[Path | None]:
    """Where the works of a project stand in its file: those with a fault are not read."""
    project, _ = read_project(source)
    paths = [p for p in (*where.keys, *where.values) if len(p) == 2 and p[0] == "work"]
    stands = {where.key(path): path for path in paths}
    return [stands.get(work.span) for work in project.works] if project else []


def _edit(
    text: str, where: Positions, path: Path, new: Sequence[tuple[int, str, int]]
) -> tuple[int, str]:
    """Where something is put in for the piece of work at a path, and what."""
    inline = ", ".join(f"{{ {_keys(a, ', ')} }}" for a in new)
    if (*path, "adjust") in where.values:  # adjust = [ … ]
        ends = [
            e for p, (_, e) in where.values.items() if p[:3] == (*path, "adjust") and len(p) == 4
        ]
        if ends:
            return max(ends), f", {inline}"
        return where.values[(*path, "adjust")][0] + 1, inline
    if path in where.values:  # work = [{ … }]
        end = where.values[path][1] - 1
        while text[end - 1] in " \t":
            end -= 1
        return end, f", adjust = [{inline}]"
    behind = max(end for p, (_, end) in where.values.items() if p[:2] == path)
    line_end = text.find("\n", behind)
    newline = "\r\n" if "\r\n" in text else "\n"
    if line_end < 0:
        line_end, before = len(text), newline
    else:
        line_end, before = line_end + 1, ""
    tables = [newline.join(("", "[[work.adjust]]", _keys(a, newline), "")) for a in new]
    return line_end, before + "".join(tables)


def _keys(adjustment: tuple[int, str, int], between: str) -> str:
    number, at, by = adjustment
    quoted = at.replace("\\", "\\\\").replace('"', '\\"')
    return between.join((f"round = {number}", f'at = "{quoted}"', f"by = {by}"))


def _says(old: Source, new: Source, added: Mapping[int, Sequence[tuple[int, str, int]]]) -> bool:
    """Whether the new text says all that the old one does, and the adjustments besides."""
    before, _ = read_project(old)
    after, _ = read_project(new)
    if before is None or after is None or len(before.works) != len(after.works):
        return False
    for number, (was, is_) in enumerate(zip(before.works, after.works, strict=True)):
        wanted = [*map(_told, was.adjustments), *added.get(number, ())]
        if [_told(a) for a in is_.adjustments] != wanted:
            return False
    return True


def _told(adjust: Adjust) -> tuple[int, str, int]:
    return adjust.round, adjust.at, adjust.by
