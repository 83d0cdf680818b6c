"""The row sheet as one HTML file: nothing in it is loaded from anywhere.

Without its script all of it is there, to be ticked by pen; the script keeps the ticks.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from pkgutil import get_data

from border.showing.marked_up import as_text as _t
from border.showing.sheet import CARE, RUNNING, EdgeSheet, Sheet
from border.showing.sheet_mending import EdgeMending, Mending
from border.showing.sheet_pictures import Picture, Pictures
from border.showing.sheet_rounds import Box, RoundSheet, RunSheet


def sheet_html(sheet: Sheet, pictures: Pictures) -> str:
    """The whole page, the pictures in it."""
    lines = [
        "<!DOCTYPE html>",
        '<html lang="en">',
        "<head>",
        '<meta charset="utf-8">',
        '<meta name="viewport" content="width=device-width, initial-scale=1">',
        f"<title>{_t(sheet.name)}: row sheet</title>",
        f"<style>\n{_data('sheet.css')}</style>",
        "</head>",
        f'<body data-project="{_t(sheet.name)}">',
        "<header>",
        f"<h1><bdi>{_t(sheet.name)}</bdi></h1>",
        _facts(sheet.facts),
        f"<p>{_t(RUNNING)}</p>",
        '<div class="keys screen" id="keys" hidden>',
        '<button type="button" id="find">Go to my place</button>',
        '<button type="button" id="clear">Take all ticks away …</button>',
        "</div>",
        '<p id="said" class="screen" role="status"></p>',
        '<p id="unkept" class="screen">Scripts are off, so ticks are not kept when the page is '
        "closed: print it, and tick by pen.</p>",
        "</header>",
        *_contents(sheet),
        "<main>",
    ]
    if pictures.yoke:
        lines += [
            '<section id="whole" aria-labelledby="whole-name">',
            '<h2 id="whole-name">The whole</h2>',
            *_pictures([pictures.yoke]),
            "</section>",
        ]
    for n, (edge, charts) in enumerate(zip(sheet.edges, pictures.edges, strict=True), 1):
        lines += _edge(edge, n, charts)
    lines += [
        *_mending(sheet.mending),
        "</main>",
        f"<footer><p><strong>Hands and eyes.</strong> {_t(CARE)}</p></footer>",
        f"<script>\n{_data('sheet.js')}</script>",
        "</body>",
        "</html>",
    ]
    return "\n".join(lines) + "\n"


def _data(name: str) -> str:
    data = get_data("border.showing", name)
    assert data is not None
    return data.decode()


def _facts(facts: Iterable[tuple[str, str]]) -> str:
    rows = [f"<dt>{_t(what)}</dt><dd>{_t(how)}</dd>" for what, how in facts]
    return "\n".join(['<dl class="facts">', *rows, "</dl>"])


def _contents(sheet: Sheet) -> list[str]:
    links = [
        f'<li><a href="#edge-{n}"><bdi>{_t(edge.name)}</bdi></a></li>'
        for n, edge in enumerate(sheet.edges, 1)
    ]
    links.append('<li><a href="#putting-right">putting right</a></li>')
    return ['<nav class="screen" aria-label="Contents">', "<ul>", *links, "</ul>", "</nav>"]


def _line(label: str) -> str:
    return f'<label class="write">{_t(label)} <input type="text" autocomplete="off"></label>'


def _tick(words: str, worked: bool = False, sort: str = "tick") -> str:
    state = " checked disabled" if worked else ""
    return f'<label class="{sort}"><input type="checkbox"{state}> <span>{words}</span></label>'


def _pictures(pictures: Iterable[Picture]) -> list[str]:
    lines = []
    for one in pictures:
        if one.drawn:
            told = f"<figcaption>{_t(one.caption)}</figcaption>"
            lines += ['<figure class="picture">', told, one.drawn.rstrip(), "</figure>"]
        else:
            lines.append(f"<p><b>{_t(one.caption)}:</b> {_t(one.lacking)}.</p>")
    return lines


# --- an edge ----------------------------------------------------------------------


def _edge(edge: EdgeSheet, number: int, charts: Sequence[Picture]) -> list[str]:
    at = f"edge-{number}"
    lines = [
        f'<section class="edge" id="{at}" aria-labelledby="{at}-name">',
        f'<h2 id="{at}-name"><bdi>{_t(edge.name)}</bdi>: <bdi>{_t(edge.title)}</bdi></h2>',
        _facts(edge.facts),
        f'<div data-keep="{_t(edge.name)}|{number}|dates">',
        _line("Begun on"),
        _line("Finished on"),
        "</div>",
        *(_loud("to be mended first", fault) for fault in edge.faults),
        "<h3>Short words</h3>",
        _facts((a.short, a.full) for a in edge.abbreviations),
        "<h3>Charts</h3>",
        *_pictures(charts),
    ]
    for round_ in edge.rounds:
        lines += _round(edge, round_, at)
    return [*lines, "</section>"]


def _loud(head: str, words: str) -> str:
    return f'<p class="loud"><strong>{_t(head)}:</strong> {_t(words)}</p>'


def _round(edge: EdgeSheet, round_: RoundSheet, edge_at: str) -> list[str]:
    at = f"{edge_at}-round-{round_.number}"
    worked = " (worked)" if round_.worked else ""
    keep = _t(f"{edge.name}|{round_.key}")
    lines = [
        f'<section class="round" id="{at}" aria-labelledby="{at}-name" data-keep="{keep}">',
        '<div class="begin">',
        f'<h3 id="{at}-name">Round {round_.number}{worked}</h3>',
        f'<p class="row">{_t(round_.row)}</p>',
    ]
    lines += [f'<p class="row"><b>In full:</b> {_t(round_.read)}</p>'] if round_.read else []
    if not round_.closes:
        verb = "did" if round_.worked else "does"
        lines.append(_loud(f"this round {verb} not close", "; ".join(round_.faults)))
    lines += [_loud("ease in", eased) for eased in round_.eased]
    if round_.found:
        lines.append(f"<p>Found, and counted on from there: {_t(round_.found)}</p>")
    opening = f" On that joint: {_t(round_.opening)}." if round_.opening else ""
    lines.append(f'<p class="how">Begins {_t(round_.begins)}.{opening}</p>')
    lines += [f'<p class="how">Repeat: {_t(repeat)}.</p>' for repeat in round_.repeats]
    lines.append("</div>")
    for run in round_.runs:
        lines += _run(run, round_.worked)
    spaces = f"; {round_.spaces} spaces for the next round" if round_.spaces else ""
    lines += [
        f'<p class="total">In all: {_t(round_.total)}{spaces}.</p>',
        *(
            [f'<p class="tape">With a tape, laid flat: {_t(round_.tape)}.</p>']
            if round_.tape
            else []
        ),
        f'<p class="thread">Thread: {_t(round_.thread)}.</p>',
        '<div class="close">',
        _tick(f"round {round_.number} is worked", round_.worked, "tick whole"),
        _line(f"What I really got in round {round_.number}"),
        "</div>",
        "</section>",
    ]
    return lines


def _run(run: RunSheet, worked: bool) -> list[str]:
    head = f'<p class="run">{_t(run.what)}: <span class="made">{_t(run.made)}</span> each</p>'
    return [
        *([head] if run.what else []),
        '<ul class="boxes">',
        *(f"<li>{_box(box, worked, alone=not run.what)}</li>" for box in run.boxes),
        "</ul>",
    ]


def _box(box: Box, worked: bool, alone: bool) -> str:
    """`alone`: what is made over it is not said of all its neighbours at once."""
    part = f" ({_t(box.part)})" if box.part else ""
    words = f'<b class="what"><bdi>{_t(box.what)}</bdi></b>{part}'
    words += f': <span class="made">{_t(box.made)}</span>' if alone else ""
    words += "".join(
        f' <strong class="here">EASE IN HERE: {_t(eased)}</strong>' for eased in box.eased
    )
    if box.joint:
        a, b = (f"<bdi>{_t(name)}</bdi>" for name in box.joint)
        at = f'at <span class="joint">{a} | {b}</span>: '
    else:
        at = ""
    on = f'; on the joint <span class="on">{_t(box.on)}</span>' if box.on else ""
    so_far = f'<b class="sum">{_t(box.so_far)}</b> so far'
    return _tick(f'{words}<span class="so-far">{at}{so_far}{on}</span>', worked)


# --- putting right ----------------------------------------------------------------


def _mending(mending: Mending) -> list[str]:
    lines = [
        '<section id="putting-right" aria-labelledby="putting-right-name">',
        '<h2 id="putting-right-name">Putting right</h2>',
        "<ol>",
        *(f"<li>{_t(step)}</li>" for step in mending.steps),
        "</ol>",
    ]
    for edge in mending.edges:
        lines += _edge_mending(edge)
    return [*lines, f"<p>{_t(mending.closing)}</p>", "</section>"]


def _edge_mending(edge: EdgeMending) -> list[str]:
    lines = ['<div class="mending">', f"<h3><bdi>{_t(edge.name)}</bdi></h3>"]
    lines.append(f"<p>{_t(edge.said)}</p>")
    if edge.lines:
        lines.append("<pre>" + "\n".join(map(_t, edge.lines)) + "</pre>")
    lines += [
        '<div class="scroll" tabindex="0" role="region" '
        f'aria-label="What each round of {_t(edge.name)} should come to">',
        "<table>",
        "<thead><tr>",
        *(f'<th scope="col">{h}</th>' for h in ("round", "count", "all of it", "what I have")),
        "</tr></thead>",
        "<tbody>",
        *(
            f'<tr><th scope="row">{r.round}</th><td>{_t(r.what)}</td><td>{_t(r.all_of)}</td>'
            '<td class="got"></td></tr>'
            for r in edge.rounds
        ),
        "</tbody>",
        "</table>",
        "</div>",
        "</div>",
    ]
    return lines
