"""For tests: SVG read back, and held to what SVG 1.1 allows of the elements that are used."""

from __future__ import annotations

import re
from xml.etree import ElementTree

SVG = "{http://www.w3.org/2000/svg}"
NUMBER = re.compile(r"-?[0-9]+(\.[0-9]+)?")
ANYWHERE = {
    "class",
    "fill",
    "stroke",
    "stroke-width",
    "stroke-dasharray",
    "transform",
}
ANYWHERE |= {"stroke-linecap", "stroke-linejoin"}
ALLOWED: dict[str, tuple[set[str], set[str]]] = {
    "svg": ({"width", "height", "viewBox"}, {"role", "font-family"}),
    "title": (set(), set()),
    "g": (set(), ANYWHERE),
    "rect": ({"width", "height"}, {"x", "y", "rx", *ANYWHERE}),
    "circle": ({"cx", "cy", "r"}, ANYWHERE),
    "ellipse": ({"cx", "cy", "rx", "ry"}, ANYWHERE),
    "line": ({"x1", "y1", "x2", "y2"}, ANYWHERE),
    "path": ({"d"}, ANYWHERE),
    "polygon": ({"points"}, ANYWHERE),
    "text": (
        {"x", "y", "font-size"},
        {"text-anchor", "font-weight", "font-style", *ANYWHERE},
    ),
}
"""By element: the attributes that it must have, and those that it may have besides."""
LENGTHS = {"x", "y", "cx", "cy", "r", "rx", "ry", "x1", "x2", "y1", "y2", "font-size"}
SEGMENT = re.compile(
    r" ?(?:[ML]-?[\d.]+ -?[\d.]+|A[\d.]+ [\d.]+ 0 [01] [01] -?[\d.]+ -?[\d.]+"
    r"|Q-?[\d.]+ -?[\d.]+ -?[\d.]+ -?[\d.]+|Z)"
)


def check_svg(text: str) -> ElementTree.Element:
    """The root of a picture; every element and attribute is one that SVG has, with a value."""
    root = ElementTree.fromstring(text)
    assert root.tag == f"{SVG}svg"
    for element in root.iter():
        name = element.tag.removeprefix(SVG)
        must, may = ALLOWED[name]
        has = set(element.attrib)
        assert must <= has <= must | may, (name, has)
        for key in has & LENGTHS:
            assert NUMBER.fullmatch(element.attrib[key]), (name, key, element.attrib[key])
        if name in ("rect", "circle", "ellipse") and "%" not in element.get("width", ""):
            sizes = [element.get(k) for k in ("width", "height", "r", "rx", "ry")]
            assert all(float(s) >= 0 for s in sizes if s is not None)
        if name == "path":
            assert element.attrib["d"].startswith("M")
            assert not SEGMENT.sub("", element.attrib["d"]), element.attrib["d"]
        assert not any(re.search(r"url|http|javascript", v) for v in element.attrib.values())
    return root


def named(root: ElementTree.Element, kind: str) -> list[ElementTree.Element]:
    """The elements of a class, in order."""
    return [e for e in root.iter() if kind in e.get("class", "").split()]


def called(element: ElementTree.Element) -> str:
    """What an element is called: its title."""
    return element.findtext(f"{SVG}title", "")


def texts(root: ElementTree.Element) -> list[str]:
    """Every line of text."""
    return ["".join(e.itertext()) for e in root.iter(f"{SVG}text")]
