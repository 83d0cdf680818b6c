"""What the user is told: findings, and the one table of their codes.

A finding is a value, never an exception: every stage returns what it could
make *and* its findings, so that one run shows every fault.
"""

from __future__ import annotations

from enum import StrEnum

from msgspec import Struct


class Severity(StrEnum):
    """How much a finding matters: an error stops exit code 0, the rest do not."""

    ERROR = "error"
    WARNING = "warning"
    NOTE = "note"


class Span(Struct, frozen=True):
    """A stretch of a source text: `source` names the text, [start, end) in code points."""

    source: str
    start: int
    end: int

    def to(self, other: Span) -> Span:
        """The span from the start of this one to the end of `other`."""
        return Span(self.source, self.start, max(self.end, other.end))


class Finding(Struct, frozen=True):
    """One thing to tell the user.

    `message` says what is wrong (lower case, no full stop), `help` what to do.
    `round` is the number of the round concerned, where there is one.
    """

    code: str
    message: str
    help: str | None = None
    span: Span | None = None
    round: int | None = None

    def __post_init__(self) -> None:
        if self.code not in CODES:
            raise KeyError(f"no such finding code: {self.code}")

    @property
    def severity(self) -> Severity:
        return CODES[self.code].severity


class Code(Struct, frozen=True):
    """A kind of finding: its severity, and what it is about in one line."""

    severity: Severity
    about: str


def _table(severity: Severity, rows: dict[str, str]) -> dict[str, Code]:
    return {code: Code(severity, about) for code, about in rows.items()}


CODES: dict[str, Code] = {
    **_table(
        Severity.ERROR,
        {
            # files
            "file-unreadable": "a file is missing, empty, too large or not UTF-8 text",
            "not-toml": "the project file is not valid TOML",
            "unknown-key": "a key that a project file does not have",
            "bad-value": "a value of the wrong kind, or out of range",
            # headings
            "terms-missing": "the border does not state its terms",
            "bad-heading": "a heading that is not known, or has no such value",
            # words and rows
            "unknown-word": "a word that the vocabulary does not have",
            "term-unknown-here": "a stitch name that the stated terms do not have",
            "exception-in-words": "an exception that only a clause can say",
            "difference-finds-nothing": "a copied row makes nothing that its copy has otherwise",
            "difference-unclear": "what a copy has otherwise can be meant in two ways",
            "difference-leaves-nothing": "what a copy leaves out is all of the row, or a repeat",
            "part-unclear": "which part of another row a row goes on with is not sure",
            "not-understood": "known words in an order that makes no step",
            "nested-too-deep": "brackets or repeats nested more than 20 deep",
            "missing-row": "a row number is left out",
            "row-twice": "a row number is used twice",
            "row-out-of-order": "rows are not in order",
            "no-rows": "a border without a single row",
            "no-such-row": "a row that is not there is copied, or said to be done",
            "copies-itself": "a row that is a copy of itself",
            "copies-uneven": "a copy gives more or fewer rows than its heading names",
            # readings to choose between
            "place-unclear": "which stitches go into the place named can be read two ways",
            "chains-unclear": "whether chains count as stitches is not said",
            "squares-unclear": "squares that nothing explains, or chains that begin none",
            "repeat-unclear": "the row prints no repeat, and would close only if repeated",
            # repeats and places
            "repeat-takes-nothing": "a repeat that could go on for ever",
            "open-repeat-inside": "a repeat to the end inside another one",
            "repeat-without-star": "a repeat goes back to a star that is not there",
            "star-without-repeat": "a star that no repeat goes back to",
            "place-inside": "a place named inside a bracket that is worked in one place",
            "begin-inside": "beginning in a place is only for the head of a row",
            "turn-inside": "turning is only for the end of a row",
            "not-at-the-head": "'first' where the first is already behind",
            "nothing-before": "'same' or 'skipped' with nothing before it",
            # scopes
            "not-covered": "a part of the edge that no clause covers",
            "unknown-name": "a name that the yoke does not have",
            "run-too-short": "a part asks for more loops than it has",
            # working
            "row-does-not-close": "a round that does not come out even",
            "no-stitches": "a row that puts no stitch on the fabric",
            "too-large": "more stitches than can be reckoned",
            "count-disagrees": "a count given in the text is not what the row comes to",
            "adjustment-has-no-place": "an adjustment that falls nowhere",
            "no-plan": "nothing eased in makes every round close",
            "found-cannot-be": "a worked round cannot come out at what was counted in it",
            "found-not-done": "what a round came out at is said, but not that it is done",
            # thread
            "balls-unknown": "what lasts is asked, but not how many balls there are, or how large",
            # yoke
            "loops-do-not-add-up": "a motif whose ring does not come to its number of loops",
            "joint-one-sided": "a joint that only one of its motifs names",
            "joint-uneven": "a joint whose two motifs give different numbers of loops",
            "joined-twice": "two motifs joined more than once",
            "ring-faulty": "a ring that cannot be read or is in an impossible order",
            "seams-too-many": "more seam loops than a joint has",
            "edge-names-differ": "one edge of the yoke is called by two names",
            "edge-name-twice": "two edges of the yoke share one name",
            "does-not-go-together": "the rings cannot be laid flat together",
            "not-connected": "a part of the yoke that is joined to nothing else",
            "name-twice": "a name used twice in the project",
            "no-such-motif": "a motif named that the yoke does not have",
            "no-such-edge": "a piece of work on an edge that is not there",
            "edge-empty": "an edge with nothing to work into",
            "never-closes": "rounds that no number of places makes close together",
            "not-written-out": "a round that cannot be written out so that it reads as the same",
            "measure-missing": "a length is needed that nobody has measured",
            "edge-needed": "a border text alone has no edge to be counted on",
        },
    ),
    **_table(
        Severity.WARNING,
        {
            "override-by-us-name": "an override names a stitch that other terms call otherwise",
            "start-chain-assumed": "chains at the head of a row taken as its first stitch",
            "names-alike": "two names for one stitch in a row, one of them by a heading",
            "squares-assumed": "stitches among squares, counted as the squares that they make",
            "star-assumed": "a mark that ends a repeat, with none that begins it",
            "times-of-the-row": "a number of times taken to be that of the whole row",
            "perhaps-counted-on": "an ordinal that may count from where the step before it began",
            "perhaps-leads-back": "chains that may lead from the end of a round to its start",
            "perhaps-leads-on": "slip stitches at a row's head that may only lead to its beginning",
            "perhaps-placed-otherwise": "a copy works in another place what may go elsewhere",
            "perhaps-this-part": "a row that is put together with a part of another one",
            "perhaps-picot": "a stitch that may close the chains before it into a picot",
            "perhaps-just-made": "a stitch that may go into what this row itself has just made",
            "at-the-side": "a stitch goes into the side of the work, and is not counted",
            "perhaps-next-of": "a next one behind a stitch of a group: a stitch, or the next group",
            "perhaps-last-of-each": "the last, the centre or the 3rd, perhaps of something else",
            "perhaps-as-they-come": "steps behind an 'in each' that may be meant for each time",
            "perhaps-of-spaces": "a skip among spaces that may be of stitches or of spaces",
            "perhaps-instead": "chains behind a repeat, perhaps in place of its own last ones",
            "perhaps-one-place": "stitches that may all be meant to go into one place",
            "perhaps-missed": "a step that may be missed along with what is missed before it",
            "perhaps-worked": "a remark between dashes that would be steps, and is not worked",
            "chains-left-out": "stitches named over chains, which may be meant as well",
            "perhaps-fewer": "stitches over more stitches, taken to stand on the middle ones",
            "foundation-named": "a foundation made in the first row, which is the edge itself",
            "foundation-passed": "chains of the foundation that are passed over from the hook",
            "other-edge": "a row that may be worked along another edge than the row before",
            "ends-inside": "a joining or a fastening off in the middle of a row",
            "rows-again": "rows to be worked again, said at the end of one of them",
            "nothing-worked": "a project with an edge, and no border on it",
            "passes-more": "one repeat passes over more than the others",
            "eased-in-beside": "an adjustment that a written-out border cannot say itself",
            "sample-unlikely": "a swatch that took far more or less thread than one would expect",
            "samples-disagree": "swatches that tell no more of the thread than none",
            "join-seen": "a new ball of thread would be joined where it is seen",
            "worked-does-not-close": "a round that is worked already does not come out even",
            "corners-left-out": "what is worked at corners, read for an edge that has none",
            "fastening-assumed": "chains fastened back with a stitch that is not named",
            "place-assumed": "a scallop, a point: what it is taken for, where no heading says so",
            "measure-unlikely": "a measure that cannot be of the work as it is reckoned",
            "sewn-twice": "two attachments that lie over the same part of an edge",
            "gathers-unusual": "cloth gathered less, or more, than is usual",
            "lace-does-not-fit": "lace that is longer or shorter than the cloth that it is sewn to",
        },
    ),
    **_table(
        Severity.NOTE,
        {
            "taken-as-remark": "words that no count depends on, taken for a remark",
            "meets-its-start": "the last repeat ends on the steps that the round began with",
            "perhaps-read-so": "a reading of a row with which it would come out",
            "perhaps-nothing-missed": "chains between stitches, with nothing missed under them",
            "perhaps-start-chain": "chains made with each repeat may stand for the first stitch",
            "perhaps-of-bracket": "a repeat behind a bracket may be of the bracket alone",
            "perhaps-shared": "the last step of a repeat may be the first of the next",
            "perhaps-misprint": "one word away from it a row would come out",
            "sewn-as-worked": "parts of cloth that lie the other way than they are named",
            "no-one-multiple": "a border that no one multiple of places makes close",
            "thread-uncalibrated": "thread lengths are estimated without a sample",
        },
    ),
}
