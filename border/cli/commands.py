"""The commands: what each reads, shows, and says by its exit code."""

from __future__ import annotations

from argparse import Namespace
from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING

from border.arguments import UsageFault
from border.cli.files import borders_in, is_folder, read_file, reason, write_whole
from border.cli.printing import in_a_word, print_json, show, tell
from border.findings import Finding, Severity

if TYPE_CHECKING:
    from border.pipeline import Pipeline
    from border.showing.eased import EasedAll

FINE, FAULTS, WRONG = 0, 1, 2


def _new(asked: Namespace) -> int:
    from border.cli.new import new

    new(asked)
    return FINE


def _check(asked: Namespace) -> int:
    pipelines = _pipelines(asked, asked.files)
    findings = [f for p in pipelines for f in p.findings]
    sources = {name: source for p in pipelines for name, source in p.texts.sources.items()}
    readings = [r for p in pipelines for r in p.readings] if asked.readings else None
    if asked.json:
        from border.showing.record import check_record

        if readings is not None:
            from border.showing.readings_tables import readings_record

            print_json(check_record(findings, sources, readings_record(readings)))
        else:
            print_json(check_record(findings, sources))
    else:
        for pipeline in pipelines:
            print(in_a_word(pipeline))
        if readings:
            from border.showing.readings_tables import readings_tables

            show(readings_tables(readings))
        tell(findings, sources)
    return _code(findings)


def _count(asked: Namespace) -> int:
    (pipeline,) = _pipelines(asked, [asked.file])
    counted = pipeline.counted
    if asked.json:
        from border.showing.record import count_record

        print_json(count_record(counted))
    else:
        if counted.pieces:
            from border.showing.tables import count_tables

            show(count_tables(counted))
        tell(counted.findings, counted.sources)
    return _code(counted.findings)


def _close(asked: Namespace) -> int:
    if len(asked.files) > 1 or is_folder(asked.files[0]):
        return _choose(asked)
    (pipeline,) = _pipelines(asked, asked.files)
    needed = pipeline.needed
    if asked.json:
        from border.showing.needs_record import close_record

        print_json(close_record(needed))
    else:
        if needed.works:
            from border.showing.needs_tables import needs_tables

            show(needs_tables(needed))
        tell(needed.findings, needed.sources)
    return _code(needed.findings)


def _choose(asked: Namespace) -> int:
    from border.asking import borders_on

    choice = borders_on(asked, borders_in(asked.files), read_file)
    if asked.json:
        from border.showing.chosen_record import chosen_record

        print_json(chosen_record(choice))
    else:
        from border.showing.chosen_tables import chosen_tables

        show(chosen_tables(choice))
        tell(choice.findings, choice.sources)
    return _code(choice.findings)


def _adjust(asked: Namespace) -> int:
    from border.wanted import is_project

    if asked.write and not is_project(asked.file):
        raise UsageFault("--write puts the plan into a project", "a border text has none\n")
    (pipeline,) = _pipelines(asked, [asked.file])
    eased = pipeline.eased(asked.all)
    if asked.write:
        _write(pipeline, eased)
    if asked.json:
        from border.showing.eased_record import adjust_record

        print_json(adjust_record(eased))
    else:
        if eased.works:
            from border.showing.eased_tables import eased_tables, what_next

            show(eased_tables(eased, sections=asked.sections))
            project = is_project(asked.file)
            print(what_next(eased, asked.file, project=project, written=asked.write), end="")
        tell(eased.findings, eased.sources)
    return _code(eased.findings)


def _write(pipeline: Pipeline, eased: EasedAll) -> None:
    """Put the plans into the project file. Raises UsageFault; then it is as it was."""
    from border.yoke.project_written import with_adjustments

    added = {
        w.number: [(a.round, a.at, a.by) for a in w.plans[0].plan.adjustments]
        for w in eased.works
        if w.plans
    }
    if not any(added.values()) or isinstance(pipeline.source, Finding):
        return
    help_ = "it is as it was: put the lines in by hand, as the plan says\n"
    text = with_adjustments(pipeline.source, added)
    if text is None:
        raise UsageFault(f"the plan cannot be put into {pipeline.name} for certain", help_)
    try:
        write_whole(pipeline.name, text)
    except OSError as fault:
        raise UsageFault(f"{pipeline.name} cannot be written: {reason(fault)}", help_) from None


def _thread(asked: Namespace) -> int:
    (pipeline,) = _pipelines(asked, [asked.file])
    told = pipeline.unwound(asked.balls, plan=asked.plan or asked.balls is not None)
    if asked.json:
        from border.showing.thread_record import thread_record

        print_json(thread_record(told))
    else:
        if told.used.mm:
            from border.showing.thread_tables import thread_tables

            show(thread_tables(told))
        tell(told.findings, told.sources)
    return _code(told.findings)


def _sheet(asked: Namespace) -> int:
    from border.showing.sheet import sheet
    from border.wanted import is_project

    (pipeline,) = _pipelines(asked, [asked.file])
    counted = pipeline.counted
    if asked.json:
        from border.showing.sheet_record import sheet_record

        print_json(sheet_record(counted))
        return _code(counted.findings)
    if counted.pieces:
        file = pipeline.name.rpartition("/")[2]
        made = sheet(counted, pipeline.tape, file, is_project(asked.file))
        if asked.text:
            from border.showing.sheet_text import sheet_text

            print(sheet_text(made), end="")
        else:
            from border.showing.sheet_html import sheet_html

            print(sheet_html(made, pipeline.sheet_pictures), end="")
    tell(counted.findings, counted.sources)
    return _code(counted.findings)


def _written(asked: Namespace) -> int:
    (pipeline,) = _pipelines(asked, [asked.file])
    written = pipeline.written(asked.terms)
    if asked.json:
        from border.showing.written_record import write_record

        print_json(write_record(written))
    else:
        print(written.text, end="")
        tell(written.findings, written.sources)
    return _code(written.findings)


def _yoke(asked: Namespace) -> int:
    from border.pipeline import Pipeline
    from border.wanted import is_project

    if not is_project(asked.file):
        raise UsageFault(f"{asked.file} is no project", "border yoke FILE.toml\n")
    pipeline = Pipeline(asked.file, read_file)
    sources, findings = pipeline.texts.sources, pipeline.yoke_findings
    if asked.json:
        from border.showing.record import yoke_record

        print_json(yoke_record(pipeline.yoke, findings, sources))
    elif asked.svg:
        if pipeline.yoke_picture:
            print(pipeline.yoke_picture, end="")
        tell(findings, sources)
    else:
        if pipeline.yoke:
            from border.showing.yoke_table import yoke_tables

            show(yoke_tables(pipeline.title, pipeline.yoke))
        tell(findings, sources)
    return _code(findings)


def _fitted(asked: Namespace) -> int:
    from border.cli.fitting import FITTED
    from border.wanted import is_project

    if not is_project(asked.file):
        raise UsageFault(f"{asked.file} is no project", f"border {asked.command} FILE.toml\n")
    (pipeline,) = _pipelines(asked, [asked.file])
    return _code(FITTED[asked.command](asked, pipeline))


def _chart(asked: Namespace) -> int:
    (pipeline,) = _pipelines(asked, [asked.file])
    drawn, findings = pipeline.charted(asked.section, asked.terms)
    if asked.section and not drawn and not any(f.severity is Severity.ERROR for f in findings):
        raise UsageFault(
            f'no edge that is worked has a part called "{asked.section}"',
            "name a section, label or motif, as border yoke lists them\n",
        )
    sources = pipeline.texts.sources
    if asked.json:
        from border.showing.chart_record import chart_record

        print_json(chart_record(pipeline.title, drawn, findings, sources))
        return _code(findings)
    if drawn:
        from border.showing.chart import chart

        print(chart(pipeline.title, drawn), end="")
    tell(findings, sources)
    return _code(findings)


def _schema(asked: Namespace) -> int:
    from border.showing.schema import schema

    print_json(schema())
    return FINE


COMMANDS = {
    "new": _new,
    "check": _check,
    "count": _count,
    "close": _close,
    "adjust": _adjust,
    "thread": _thread,
    "sheet": _sheet,
    "write": _written,
    "flat": _fitted,
    "attach": _fitted,
    "size": _fitted,
    "yoke": _yoke,
    "chart": _chart,
    "schema": _schema,
}


def _pipelines(asked: Namespace, files: Sequence[str]) -> list[Pipeline]:
    from border.asking import pipelines

    return pipelines(asked, files, read_file)


def _code(findings: Iterable[Finding]) -> int:
    codes = {f.code: f.severity for f in findings}
    if codes.keys() & {"file-unreadable", "edge-needed"}:
        return WRONG
    return FAULTS if Severity.ERROR in codes.values() else FINE
