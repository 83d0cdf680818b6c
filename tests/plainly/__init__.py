"""A second implementation of the border language, made from its description alone.

Naive on purpose: every site is listed by going over the whole fabric, every position is a
fraction. It serves the tests as a witness, and nothing else.
"""

from plainly.work import work_border

__all__ = ["work_border"]
