"""Inputs for fuzzing: border texts, projects and command lines, from a seeded random source.

Most are real ones with something wrong: of the patterns and of the cases of the
findings, cut up, spliced and spoilt. Others are heaps of words of the vocabulary,
or what no keyboard makes.
"""

from __future__ import annotations

import re
from functools import lru_cache
from pathlib import Path
from random import Random

from border.arguments import COMMANDS, NEW
from border.text.vocabulary import names, phrases_from, vocabulary

TESTS = Path(__file__).parent.parent
MOST = 1_000
"""Characters of an input; what longer ones cost is tested by itself."""

_ODD = (
    *"\0\a\b\t\v\f\r\n\x1b\x7f\x85\xa0\u200b\u200e\u202e\u2028\u2066\ufeff\ufffd\ud7ff\ue000",
    *("\r\n", "e\u0301", "\u0661\u0662", "\u00b2", "\u2167", "\uff11", "\U0001f9f6", "ﬁ", "ß", "İ"),
    *(
        "\u05e9\u05dc",
        "--",
        "—",
        "„",
        '"',
        "#",
        "=",
        "**",
        "((",
        "))",
        "(a)",
        "†",
        "§",
        "\u00d7",
        "½",
    ),
)
_NUMBERS = ("0", "1", "2", "3", "7", "00", "12", "100", "9999", "999999999", "1" + "0" * 30)
_SPLIT = re.compile(r"\w+|\s+|.", re.DOTALL)


@lru_cache(maxsize=1)
def borders() -> tuple[str, ...]:
    """The border texts of the patterns, of the cases, and in the tests' own rows."""
    files = [*TESTS.parent.glob("patterns/*.border"), *TESTS.glob("errors/*/*.border")]
    texts = [file.read_text("utf-8") for file in sorted(files)]
    for file in sorted(TESTS.glob("*_test.py")):
        rows = re.findall(r'"((?:round|rows?|rnd)[^"\n]{12,200})"', file.read_text("utf-8"))
        texts += [f"terms: us\n{row}\n" for row in rows]
    return tuple(texts)


@lru_cache(maxsize=1)
def projects() -> tuple[str, ...]:
    """The projects of the patterns and of the cases."""
    files = [*TESTS.parent.glob("patterns/*.toml"), *TESTS.glob("errors/*/*.toml")]
    return tuple(file.read_text("utf-8") for file in sorted(files))


@lru_cache(maxsize=1)
def phrases() -> tuple[str, ...]:
    """Every phrase that the vocabulary has, in all terms, numbers and marks with them."""
    words = vocabulary()
    found = {" ".join(phrase) for word in words.patterns for phrase, _ in phrases_from(word)}
    for terms in ("us", "uk", "early"):
        found |= {" ".join(phrase) for phrase in names(terms, ()).known}
    found |= {*words.numbers, *words.ordinals, *words.times, *_NUMBERS}
    short = [phrase for phrase in sorted(found) if phrase.count(" ") < 3]
    return tuple(sorted(found)[::9] + short + [*",;.:*()[]-+x"] * 12)


@lru_cache(maxsize=1)
def pieces() -> tuple[str, ...]:
    """The rows of the tables in `phrases/`, cut behind their commas and semicolons."""
    found: set[str] = set()
    for file in sorted(TESTS.glob("phrases/*_test.py")):
        for row in re.findall(r'^ +"([^"\n]{12,300})"[:,]', file.read_text("utf-8"), re.MULTILINE):
            found |= {piece.strip() for piece in re.split(r"(?<=[,;])\s+", row)}
    return tuple(sorted(found))


def pieced(random: Random) -> str:
    """Rows in the books' words, put together from pieces of others."""
    rows = []
    for n in range(1, random.choice((1, 1, 2)) + 1):
        said = random.choices(pieces(), k=random.randint(1, 6))
        rows.append(f"round {n}: " + " ".join(f"{x}{'' if x[-1] in ',;' else ','}" for x in said))
    terms, counted = random.choice(("us", "uk", "early")), random.choice(("yes", "no"))
    headings = f"terms: {terms}\nchains count as stitches: {counted}\nplain means us sc\n"
    return headings + "\n".join(rows)


def heap(random: Random) -> str:
    """Words of the vocabulary, as they come; a few rows of them."""
    rows = []
    for n in range(1, random.choice((1, 1, 2, 4)) + 1):
        count = random.choice((1, 3, 6, 6, 12, 25))
        rows.append(f"round {n}: " + " ".join(random.choices(phrases(), k=count)))
    return f"terms: {random.choice(('us', 'uk', 'early'))}\n" + "\n".join(rows)


def nested(random: Random) -> str:
    """Repeats of repeats, brackets in brackets, figures of figures."""
    depth = random.choice((2, 5, 19, 20, 21, 60))
    texts = ("1 dc in next loop", "1 dc in each loop", "ch 3", "skip 1 loop", "", "2 dc, ch 1")
    text = random.choice(texts)
    for _ in range(depth):
        often = random.choice(_NUMBERS)
        text = random.choice(
            (
                f"({text}) {often} times",
                f"*{text}; repeat from * {often} times",
                f"[{text}] twice",
                f"({text}, ch 1) in next loop",
                f"({text}, 2 dc in each st) as they come",
                f"+ {text} + {often} times",
                f"*{text}; repeat from *",
            )
        )
    return f"terms: us\nfan = 2 dc, fan\nround 1: {text}\nround 2: 1 sc in each st."


def noise(random: Random) -> str:
    """Signs of all alphabets, and of none."""
    signs = [chr(random.randrange(0xD800)) for _ in range(random.randrange(1, 40))]
    return "terms: us\nround 1: " + "".join(signs) + " 1 dc " + "".join(random.choices(_ODD, k=9))


def spoilt(random: Random, text: str, others: tuple[str, ...]) -> str:
    """A text with a few things wrong: left out, twice, exchanged, from elsewhere, odd."""
    parts = _SPLIT.findall(text[:MOST])
    for _ in range(random.choice((1, 1, 2, 3, 8))):
        at = random.randrange(len(parts) + 1)
        to = min(len(parts), at + random.choice((1, 1, 2, 5, 20)))
        match random.randrange(7):
            case 0:
                del parts[at:to]
            case 1:
                parts[at:at] = parts[at:to] * random.choice((1, 2, 9))
            case 2:
                parts[at:to] = [random.choice(_NUMBERS)]
            case 3:
                parts[at:at] = [" ", random.choice(phrases()), " "]
            case 4:
                parts[at:at] = [random.choice(_ODD)]
            case 5:
                other = _SPLIT.findall(random.choice(others)[:MOST])
                begin = random.randrange(len(other) + 1)
                parts[at:to] = other[begin : begin + random.choice((3, 10, 60))]
            case _:
                parts[at:to] = reversed(parts[at:to])
    return "".join(parts)[:MOST]


def border_text(random: Random) -> str:
    """A border text, or what someone might take for one."""
    kind = random.random()
    if kind < 0.3:
        return heap(random)
    if kind < 0.36:
        return nested(random)
    if kind < 0.4:
        return noise(random)
    if kind < 0.6:
        text = pieced(random)
        return spoilt(random, text, borders()) if kind < 0.5 else text
    return spoilt(random, random.choice(borders()), borders())


def project(random: Random) -> str:
    """A project file with something wrong."""
    text = random.choice(projects())
    lines = text.splitlines(keepends=True)
    for _ in range(random.choice((0, 1, 1, 2, 4))):
        at, to = random.randrange(len(lines)), random.randrange(len(lines))
        match random.randrange(4):
            case 0:
                del lines[at]
            case 1:
                lines.insert(to, lines[at])
            case 2:
                lines[at], lines[to] = lines[to], lines[at]
            case _:
                values = ("-1", "0", "1e400", "nan", "[]", "{}", '""', "true", '"a.b"', *_NUMBERS)
                lines[at] = re.sub(r"=.*", f"= {random.choice(values)}", lines[at])
        if not lines:
            break
    text = "".join(lines)
    return spoilt(random, text, projects()) if random.random() < 0.4 else text


_VALUES = (
    *("", "-1", "0", "1", "3", "12", "78", "6,6,3,3", "1,", ",", "6,6,,3", "1000001", "9" * 12),
    *("us", "uk", "neck", "front.1", "nan", "inf", "1.5", "2.0.0", "\0", "\ud800", "é", "--", "-"),
    *("yoke", "collar", "cuff", "strip", "2,2", "4,6", "1,6,0", "16", "42", "left", "a\nb", "١٢"),
)


def command_line(random: Random, files: tuple[str, ...]) -> list[str]:
    """A command with options, mostly its own, and values, often wrong."""
    command = random.choice([*COMMANDS, *COMMANDS, "", "help", "conut"])
    line = [command]
    options = ["--json", "--loops", "--runs", "--open", "--work", "--all", "--sections", "--text"]
    options += ["--terms", "--section", "--svg", "--plan", "--balls", "--readings", "--usual"]
    if command == "new":
        options += [f"--{key.replace('_', '-')}" for key in NEW] * 2
        line.append(random.choice(("made", "made/in", "", ".", "\0", "a" * 300)))
    else:
        line += random.choices(files, k=random.choice((0, 1, 1, 1, 1, 2)))
    for option in random.choices(options, k=random.choice((0, 1, 1, 2, 3, 6))):
        line.append(option)
        if random.random() < 0.7:
            line.append(random.choice(_VALUES))
    if random.random() < 0.2:
        random.shuffle(line)
    return line
