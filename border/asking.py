"""From the command line as asked to the files on their way: what goes with what."""

from __future__ import annotations

from argparse import Namespace
from collections.abc import Sequence

from border.arguments import UsageFault
from border.pipeline import AskedEdge, Pipeline, is_project
from border.texts import Read


def pipelines(asked: Namespace, files: Sequence[str], read: Read) -> list[Pipeline]:
    """One pipeline for each file: edges are for border texts, `--work` is for projects.

    Raises UsageFault.
    """
    edge = AskedEdge(asked.loops, asked.runs or (), not asked.opened)
    given = asked.loops or asked.runs
    if asked.opened and not given and asked.command != "close":
        raise UsageFault("--open goes with --loops or --runs", "as in --loops 78 --open\n")
    if (given or asked.opened) and all(map(is_project, files)):
        raise UsageFault(
            "a project says itself what its edges are", "--loops and --runs are for a border text\n"
        )
    if asked.work and not any(map(is_project, files)):
        raise UsageFault("--work picks an edge of a project", "a border text alone has none\n")
    made = []
    for name in files:
        project = is_project(name)
        pipeline = Pipeline(name, read, None if project else edge, asked.work if project else None)
        worked = [work.edge for work in pipeline.works]
        if project and pipeline.project and asked.work and asked.work not in worked:
            raise UsageFault(
                f'no work is done on an edge called "{asked.work}" in {name}',
                f"the edges worked are: {', '.join(dict.fromkeys(worked)) or 'none'}\n",
            )
        made.append(pipeline)
    return made
