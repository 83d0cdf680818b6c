"""The JSON Schema of everything that `--json` prints."""

from __future__ import annotations

from typing import Any

from border.showing.chart_shapes import (
    ChartRecord,
    ChartRoundRecord,
    ChartWorkRecord,
    SymbolRecord,
)
from border.showing.chosen_shapes import ChoiceRecord, FitRecord
from border.showing.eased_shapes import (
    AdjustRecord,
    EasedWorkRecord,
    LyingRecord,
    PlanAdjustmentRecord,
    PlanRecord,
    PointRecord,
    SectionRepeatsRecord,
)
from border.showing.lying_shapes import (
    BandRecord,
    ChangeRecord,
    FlatRecord,
    LiesRecord,
    LyingWorkRecord,
    MarkRecord,
    RoundLiesRecord,
    SectionLiesRecord,
    TurningRecord,
)
from border.showing.needs_shapes import (
    CloseRecord,
    CloseWorksRecord,
    EitherRecord,
    NeedRecord,
    RemedyRecord,
    RoundNeedRecord,
    StretchNeedRecord,
    WorkNeedRecord,
)
from border.showing.readings_shapes import EdgeReadingsRecord, ReadingRecord
from border.showing.sewing_shapes import (
    AttachRecord,
    PartSewnRecord,
    PinRecord,
    SewnEdgeRecord,
)
from border.showing.shapes import (
    AdjustmentRecord,
    CheckRecord,
    CountRecord,
    EdgeRecord,
    FindingRecord,
    JointRecord,
    MotifRecord,
    RepeatRecord,
    RoundRecord,
    RunRecord,
    SectionRecord,
    TallyRecord,
    ThreadRecord,
    WorkRecord,
    YokeRecord,
)
from border.showing.sheet_shapes import (
    OnTheWayRecord,
    SheetRecord,
    SheetRoundRecord,
    SheetWorkRecord,
    StageRecord,
)
from border.showing.sizing_shapes import (
    EdgeSizeRecord,
    RoundSizeRecord,
    SizedRecord,
    SizeRecord,
)
from border.showing.starter_record import NewRecord
from border.showing.thread_shapes import (
    BallRecord,
    GaugeRecord,
    LeftOutRecord,
    LengthRecord,
    MaterialRecord,
    RoundThreadRecord,
    SparingRecord,
    StopRecord,
    SwatchRecord,
    ThreadToldRecord,
    WorkThreadRecord,
)
from border.showing.written_shapes import WriteRecord, WrittenWorkRecord

_SHAPES = (
    ReadingRecord,
    EdgeReadingsRecord,
    RoundSizeRecord,
    EdgeSizeRecord,
    SizedRecord,
    SizeRecord,
    BandRecord,
    LiesRecord,
    SectionLiesRecord,
    RoundLiesRecord,
    MarkRecord,
    ChangeRecord,
    TurningRecord,
    LyingWorkRecord,
    FlatRecord,
    PartSewnRecord,
    PinRecord,
    SewnEdgeRecord,
    AttachRecord,
    SwatchRecord,
    GaugeRecord,
    MaterialRecord,
    LengthRecord,
    RoundThreadRecord,
    WorkThreadRecord,
    StopRecord,
    BallRecord,
    LeftOutRecord,
    SparingRecord,
    ThreadToldRecord,
    NewRecord,
    SymbolRecord,
    ChartRoundRecord,
    ChartWorkRecord,
    ChartRecord,
    WrittenWorkRecord,
    WriteRecord,
    OnTheWayRecord,
    StageRecord,
    SheetRoundRecord,
    SheetWorkRecord,
    SheetRecord,
    FitRecord,
    ChoiceRecord,
    PlanAdjustmentRecord,
    PlanRecord,
    PointRecord,
    SectionRepeatsRecord,
    LyingRecord,
    EasedWorkRecord,
    AdjustRecord,
    TallyRecord,
    RepeatRecord,
    SectionRecord,
    MotifRecord,
    JointRecord,
    AdjustmentRecord,
    RoundRecord,
    WorkRecord,
    ThreadRecord,
    FindingRecord,
    CountRecord,
    CheckRecord,
    RunRecord,
    EdgeRecord,
    YokeRecord,
    EitherRecord,
    StretchNeedRecord,
    RoundNeedRecord,
    RemedyRecord,
    NeedRecord,
    WorkNeedRecord,
    CloseRecord,
    CloseWorksRecord,
)


def schema() -> dict[str, Any]:
    """The JSON Schema (2020-12) of the record of `count`; the other records among its `$defs`."""
    from pydantic import TypeAdapter

    for shape in _SHAPES:
        setattr(shape, "__pydantic_config__", {"extra": "forbid", "strict": True})  # noqa: B010
    records = (
        CountRecord,
        CheckRecord,
        YokeRecord,
        CloseRecord,
        CloseWorksRecord,
        AdjustRecord,
        ChoiceRecord,
        SheetRecord,
        WriteRecord,
        FlatRecord,
        AttachRecord,
        SizeRecord,
        ThreadToldRecord,
        NewRecord,
        ChartRecord,
    )
    _, made = TypeAdapter.json_schemas(
        [(shape.__name__, "validation", TypeAdapter(shape)) for shape in records]
    )
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "The record of border count --json",
        "$ref": "#/$defs/CountRecord",
        "$defs": made["$defs"],
    }
