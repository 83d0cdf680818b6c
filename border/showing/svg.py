"""Writing SVG: elements as text, everything a user wrote escaped, black on white.

The picture is one file that loads nothing. It has no style sheet and no ids, so it can
stand in a page beside others as it is. Lengths are in pixels, the second axis downwards.
"""

from __future__ import annotations

from unicodedata import east_asian_width

from border.showing.marked_up import as_text

INK, PAPER = "#000", "#fff"
FONT = "sans-serif"


def tag(name: str, *inside: str, **attributes: str | float) -> str:
    """An element; `stroke_width` is written `stroke-width`, numbers to the hundredth."""
    written = "".join(
        f' {key.strip("_").replace("_", "-")}="{_value(value)}"'
        for key, value in attributes.items()
    )
    content = "".join(inside)
    return f"<{name}{written}>{content}</{name}>" if inside else f"<{name}{written}/>"


def words(text: str, x: float, y: float, size: float = 12, **attributes: str | float) -> str:
    """A line of text, in the middle of `x` if nothing else is said."""
    usual = {"text_anchor": "middle", "fill": INK, "stroke": "none"}
    return tag("text", as_text(text), **{"x": x, "y": y, "font_size": size, **usual, **attributes})


def called(name: str) -> str:
    """What the element that it stands in is called: shown on pointing at it, and read aloud."""
    return tag("title", as_text(name))


def circle(x: float, y: float, r: float, **attributes: str | float) -> str:
    """A circle of radius r about (x, y)."""
    return tag("circle", cx=x, cy=y, r=r, **attributes)


def line(x1: float, y1: float, x2: float, y2: float, **attributes: str | float) -> str:
    """A straight line from (x1, y1) to (x2, y2)."""
    return tag("line", x1=x1, y1=y1, x2=x2, y2=y2, **attributes)


def picture(width: float, height: float, title: str, *inside: str, alone: bool = True) -> str:
    """White paper, black lines, and a title for those who cannot see it.

    `alone`: a file by itself, else a part of an HTML page.
    """
    named = {"xmlns": "http://www.w3.org/2000/svg"} if alone else {}
    paper = tag("rect", width="100%", height="100%", fill=PAPER)
    drawn = tag("g", *inside, fill="none", stroke=INK, stroke_width=1.2)
    whole = tag(
        "svg",
        called(title),
        paper,
        drawn,
        **named,
        width=width,
        height=height,
        viewBox=f"0 0 {number(width)} {number(height)}",
        font_family=FONT,
        role="img",
    )
    return whole.replace("><g", ">\n<g") + "\n"


def number(value: float) -> str:
    """To the hundredth, without noughts at the end, and never -0."""
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def width_of(text: str, size: float) -> float:
    """About how wide a line of text is; never much too little."""
    units = sum(1.0 if east_asian_width(sign) in "WF" else 0.6 for sign in text)
    return units * size


def fitting(text: str, room: float, most: float, least: float) -> float:
    """The size at which a text fits into so much room, within bounds."""
    wide = width_of(text, 1.0)
    return max(least, min(most, room / wide if wide else most))


def shortened(text: str, room: float, size: float) -> str:
    """A text cut so that it fits, with a mark where it was cut."""
    if width_of(text, size) <= room:
        return text
    while text and width_of(text + "…", size) > room:
        text = text[:-1]
    return text + "…"


def _value(value: str | float) -> str:
    return as_text(value) if isinstance(value, str) else number(value)
