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
    if pipeline.project is None:
        tell(pipeline.findings, pipeline.texts.sources)
        return pipeline.findings
    sewing = pipeline.sewing
    if not pipeline.project.attachments:
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


_SEWN = 'say what is, in an [[attach]]: edge = "hem", parts = [{ plain_mm = 60 }]\n'

FITTED: dict[str, Callable[[Namespace, Pipeline], Iterable[Finding]]] = {
    "flat": _flat,
    "attach": _attach,
}
