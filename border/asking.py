"""From the command line as asked to the files on their way: what goes with what."""

from __future__ import annotations

from argparse import Namespace
from collections.abc import Sequence

from msgspec.structs import replace

from border.arguments import UsageFault
from border.pipeline import Pipeline
from border.showing.chosen import Choice
from border.texts import Read
from border.wanted import AskedEdge, is_project


def pipelines(asked: Namespace, files: Sequence[str], read: Read) -> list[Pipeline]:
    """One pipeline for each file: edges are for border texts, `--work` is for projects.

    Raises UsageFault.
    """
    edge = AskedEdge(asked.loops, asked.runs or (), not asked.opened)
    given = asked.loops or asked.runs
    if asked.opened and not given and asked.command != "close":
        raise UsageFault("--open goes with --loops or --runs", "as in --loops 78 --open\n")
    projects = [is_project(name) for name in files]
    _fitting(asked, edges_known=all(projects), a_project=any(projects))
    made = []
    for name in files:
        project = is_project(name)
        on, only = (None, asked.work) if project else (edge, None)
        pipeline = Pipeline(name, read, on, only, asked.command)
        worked = [work.edge for work in pipeline.works]
        if project and pipeline.project and asked.work and asked.work not in worked:
            raise UsageFault(
                f'no work is done on an edge called "{asked.work}" in {name}',
                f"the edges worked are: {', '.join(dict.fromkeys(worked)) or 'none'}\n",
            )
        made.append(pipeline)
    return made


def _fitting(asked: Namespace, *, edges_known: bool, a_project: bool) -> None:
    """Refuse an edge where all edges are known, and `--work` where there is no project."""
    if edges_known and (asked.loops or asked.runs or asked.opened):
        raise UsageFault(
            "a project says itself what its edges are", "--loops and --runs are for a border text\n"
        )
    if asked.work and not a_project:
        raise UsageFault("--work picks an edge of a project", "a border text alone has none\n")


def borders_on(asked: Namespace, files: Sequence[str], read: Read) -> Choice:
    """Several borders on the edges of the project among the files, or on the edge asked for.

    Raises UsageFault.
    """
    from border.choosing import chosen

    named = [name for name in files if is_project(name)]
    borders = [name for name in files if not is_project(name)]
    if len(named) > 1:
        raise UsageFault("several projects are named", "name the one whose edges are meant\n")
    if not borders:
        raise UsageFault("no border text is named", "name some, or a folder that has some\n")
    _fitting(asked, edges_known=bool(named), a_project=bool(named))
    asked_edge = AskedEdge(asked.loops, asked.runs or (), not asked.opened)
    home = Pipeline(named[0] if named else borders[0], read, asked_edge)
    edges = [edge for edge in home.edges if asked.work in (None, edge.name)]
    if named and asked.work and not edges:
        names = ", ".join(edge.name for edge in home.edges) or "none"
        raise UsageFault(f'there is no edge "{asked.work}"', f"the edges are: {names}\n")
    edges += [asked_edge.edge] if asked_edge.edge else []
    texts = [(name, home.texts.border(name)) for name in borders]
    name = home.title if named else ""
    choice = chosen(name, texts, edges, home.project, not asked.opened, home.texts.sources)
    told = home.yoke_findings if named else ()
    return replace(choice, findings=tuple(dict.fromkeys((*told, *choice.findings))))
