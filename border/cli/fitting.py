"""The commands that fit lace to measure: each shows its answer, and gives what is told of it."""

from __future__ import annotations

from argparse import Namespace
from collections.abc import Callable, Iterable
from typing import TYPE_CHECKING

from border.arguments import UsageFault
from border.cli.printing import print_json, show, tell
from border.findings import Finding

if TYPE_CHECKING:
    from border.pipeline import Pipeline


def _flat(asked: Namespace, pipeline: Pipeline) -> Iterable[Finding]:
    lying = pipeline.lying
    if asked.json:
        from border.showing.lying_record import flat_record

        print_json(flat_record(lying))
    else:
        if lying.works:
            from border.showing.lying_tables import lying_tables

            show(lying_tables(lying))
        tell(lying.findings, lying.sources)
    return lying.findings


def _attach(asked: Namespace, pipeline: Pipeline) -> Iterable[Finding]:
    sewing = pipeline.sewing
    if pipeline.project and not pipeline.project.attachments and not sewing.findings:
        raise UsageFault(f"nothing is sewn to cloth in {asked.file}", _SEWN)
    if asked.json:
        from border.showing.sewing_record import attach_record

        print_json(attach_record(sewing))
    else:
        if sewing.edges:
            from border.showing.sewing_tables import sewing_tables

            show(sewing_tables(sewing))
        tell(sewing.findings, sewing.sources)
    return sewing.findings


def _size(asked: Namespace, pipeline: Pipeline) -> Iterable[Finding]:
    _sizes_asked(asked, pipeline)
    sizing = pipeline.resized(asked.edge, asked.length, asked.more or ())
    if asked.json:
        from border.showing.sizing_record import size_record

        print_json(size_record(sizing))
    else:
        from border.showing.sizing_tables import sizing_tables

        if sizing.then or not sizing.findings:
            show(sizing_tables(sizing))
        tell(sizing.findings, sizing.sources)
    return sizing.findings


def _sizes_asked(asked: Namespace, pipeline: Pipeline) -> None:
    """Refuse a size of nothing, or of what the project does not have. Raises UsageFault."""
    from border.yoke.resized import sections_of

    if (asked.length is None) == (asked.more is None):
        raise UsageFault("say either a length or how many wheels more", _SIZES)
    if (asked.edge is None) != (asked.length is None):
        raise UsageFault("--edge and --length go together", _SIZES)
    if pipeline.project is None:
        return
    edges = [edge.name for edge in pipeline.edges]
    if asked.edge is not None and asked.edge not in edges:
        names = ", ".join(edges) or "none"
        raise UsageFault(f'there is no edge "{asked.edge}"', f"the edges are: {names}\n")
    can = sections_of(pipeline.project)
    for name, by in asked.more or ():
        if name not in can:
            names = ", ".join(can) or "none"
            raise UsageFault(
                f'there is no section "{name}" to be made longer', f"there are: {names}\n"
            )
        if can[name] + by < 1:
            raise UsageFault(f'"{name}" has only {can[name]} to lose', "leave it one at least\n")


_SIZES = "as in --edge neck --length 820, or --more front=1,back=1\n"
_SEWN = 'say what is, in an [[attach]]: edge = "hem", parts = [{ plain_mm = 60 }]\n'

FITTED: dict[str, Callable[[Namespace, Pipeline], Iterable[Finding]]] = {
    "flat": _flat,
    "attach": _attach,
    "size": _size,
}
