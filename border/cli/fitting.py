"""The commands that fit lace to measure: each shows its answer, and gives what is told of it."""

from __future__ import annotations

from argparse import Namespace
from collections.abc import Callable, Iterable
from typing import TYPE_CHECKING

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


FITTED: dict[str, Callable[[Namespace, Pipeline], Iterable[Finding]]] = {"flat": _flat}
