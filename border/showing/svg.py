"""Writing SVG: elements as text, everything a user wrote escaped, black on white.

The picture is one file that loads nothing. Lengths are in pixels, the second
axis downwards.
"""

from __future__ import annotations

from html import escape
from unicodedata import east_asian_width

from border.showing.telling import harmless

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
    given: dict[str, str | float] = {"text_anchor": "middle", **attributes}
    return tag("text", _escaped(text), x=x, y=y, font_size=size, **given)


def circle(x: float, y: float, r: float, **attributes: str | float) -> str:
    return tag("circle", cx=x, cy=y, r=r, **attributes)


def line(x1: float, y1: float, x2: float, y2: float, **attributes: str | float) -> str:
    return tag("line", x1=x1, y1=y1, x2=x2, y2=y2, **attributes)


def picture(width: float, height: float, title: str, *inside: str) -> str:
    """A whole file: white paper, black lines, and a title for those who cannot see it."""
    paper = tag("rect", width="100%", height="100%", fill=PAPER)
    group = tag("g", *inside, fill="none", stroke=INK, stroke_width=1.2)
    return (
        tag(
            "svg",
            tag("title", _escaped(title)),
            paper,
            tag("style", f"text{{fill:{INK};stroke:none;font-family:{FONT}}}"),
            group,
            xmlns="http://www.w3.org/2000/svg",
            width=width,
            height=height,
            viewBox=f"0 0 {number(width)} {number(height)}",
            role="img",
        ).replace("><g", ">\n<g")
        + "\n"
    )


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
    return _escaped(value) if isinstance(value, str) else number(value)


def _escaped(text: str) -> str:
    """Fit for XML: no sign with a meaning there, none that it does not allow."""
    return escape(harmless(text).replace("\ufffe", "\ufffd").replace("\uffff", "\ufffd"))
