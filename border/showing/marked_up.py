"""A user's words as text in HTML and SVG, whatever they say."""

from __future__ import annotations

from html import escape

from border.showing.telling import harmless


def as_text(text: str) -> str:
    """No sign that has a meaning there, and no code point that is no character."""
    if text.isascii():
        return escape(harmless(text))
    kept = ("\ufffd" if _no_character(ord(c)) else c for c in harmless(text))
    return escape("".join(kept))


def _no_character(point: int) -> bool:
    return point & 0xFFFE == 0xFFFE or 0xFDD0 <= point <= 0xFDEF
