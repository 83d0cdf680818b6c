"""The sewing of an edge to cloth, for a needleworker: part by part, with pins and stitches."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from rich.console import Group, RenderableType
from rich.table import Table
from rich.text import Text

from border.reckoning.attaching import PartSewn, Pin, Sewn
from border.reckoning.lace_pieces import Piece
from border.showing.layout import Rows
from border.showing.lengths import between
from border.showing.sewing import SewnAll, SewnEdge
from border.showing.telling import harmless
from border.text.amounts import some

MOST = 12
"""Pieces of lace that are told one by one."""

_EIGHTHS = ("the start", "1/8", "1/4", "3/8", "the middle", "5/8", "3/4", "7/8", "the end")


def sewing_tables(sewing: SewnAll) -> Group:
    """Everything that is sewn to cloth."""
    parts: list[RenderableType] = []
    for edge in sewing.edges:
        sewn = edge.sewn
        parts += [_heading(edge), Text(), Rows(tuple(_parts(sewn)))]
        parts += [Text("pins", style="bold"), _pins(edge), Text()]
        parts += [Text(line) for line in _washed(sewn)]
    return Group(*parts)


def _heading(edge: SewnEdge) -> Text:
    sewn = edge.sewn
    where = f"{edge.edge}, over {', then '.join(edge.over)}" if edge.over else edge.edge
    text = Text(harmless(where), style="bold")
    what = f"round {edge.round}" if edge.round else "the edge itself"
    told = f"\n{what}: {some(len(sewn.pieces), sewn.of)} sewn to {sewn.finished_mm:g} mm of cloth"
    if sewn.lace is None:
        told += "\nhow long the lace lies there is not known: no swatch, or no size of the edge"
    else:
        fits = ", which does not fit" if sewn.too_long else ""
        told += f"\nthe lace lies {between(sewn.lace)} long there{fits}"
    return text.append(told, style="not bold")


# --- the parts --------------------------------------------------------------------


def _parts(sewn: Sewn) -> Iterator[tuple[str, Text]]:
    for number, part in enumerate(sewn.parts, 1):
        yield f"part {number}", Text(_cloth(part))
        yield "", Text(_lace(part, sewn.of))
        yield "", Text(_stitches(part, sewn.of))


def _cloth(part: PartSewn) -> str:
    cut = f"; before the wash cut {part.cut_mm:.0f} mm" if part.cut_mm is not None else ""
    if not part.gathered:
        return f"plain, {part.finished_mm:g} mm{cut}"
    usual = "" if part.usual else ", not the usual"
    how = f"{part.ratio:.2g} : 1{usual}"
    return f"{part.cloth_mm:g} mm gathered into {part.finished_mm:g} mm, {how}{cut}"


def _lace(part: PartSewn, of: str) -> str:
    if not part.pieces:
        return f"no whole {of} lies on it"
    which = f"no. {part.first}"
    which += f" to {part.last}" if part.pieces > 1 else ""
    of_cloth = f", {part.cloth_mm / part.pieces:.2g} mm of cloth to each" if part.gathered else ""
    each = f"{part.finished_mm / part.pieces:.2g} mm to each{of_cloth}"
    return f"{some(part.pieces, of)}, {which}; {each}"


def _stitches(part: PartSewn, of: str) -> str:
    """How many sewing stitches catch which piece."""
    total = sum(part.takes)
    if not total:
        return "nothing is caught"
    apart = f"{some(total, 'sewing stitch')}, {part.finished_mm / total:.2g} mm apart"
    least, most = min(part.takes), max(part.takes)
    if least == most:
        return f"{apart}: {least} in each {of}"
    numbers = [part.first + i for i, n in enumerate(part.takes) if n == most]
    which = f"no. {_listed(numbers)}"
    if not least:
        return f"{apart}: one in {which}"
    return f"{apart}: {least} in each {of}, one more in {which}"


def _listed(numbers: Sequence[int]) -> str:
    told = ", ".join(map(str, numbers[:MOST]))
    return f"{told} and so on, {len(numbers)} in all" if len(numbers) > MOST else told


# --- the pins ---------------------------------------------------------------------


def _pins(edge: SewnEdge) -> Table:
    table = Table(box=None, pad_edge=False, padding=(0, 2, 0, 2), header_style="bold")
    table.add_column("pin at", no_wrap=True)
    table.add_column("in the lace")
    for name in ("seam", "cloth"):
        table.add_column(name, justify="right", no_wrap=True)
    for pin in edge.sewn.pins:
        at = "a new part" if pin.eighths is None else _EIGHTHS[pin.eighths]
        where = Text(harmless(_where(pin, edge.sewn.of)))
        table.add_row(at, where, f"{pin.lace_mm:.0f} mm", f"{pin.cloth_mm:.0f} mm")
    return table


def _where(pin: Pin, of: str) -> str:
    if pin.behind is None:
        return "before the first"
    return f"behind no. {pin.pieces}{_over(pin.behind, of)}"


def _over(piece: Piece, of: str) -> str:
    if not piece.motif:
        return ""
    return f": {of} {piece.number} {'on' if '|' in piece.motif else 'of'} {piece.motif}"


def _washed(sewn: Sewn) -> Iterator[str]:
    if sewn.cloth_keeps is None and sewn.lace_keeps is None:
        return
    for name, keeps in (("cloth", sewn.cloth_keeps), ("lace", sewn.lace_keeps)):
        if keeps is None:
            yield f"the {name} is taken to keep its length in the wash (no swatch)"
        else:
            change = abs(1 - keeps) * 100
            how = "shrinks" if keeps < 1 else "grows"
            yield f"the {name} {how} {change:.2g} % in the wash, by its swatch"
    yield ""
