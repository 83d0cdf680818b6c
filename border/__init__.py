"""A row-by-row border stitch compiler and counter.

From Python, what `--json` prints is at hand as dictionaries with known keys:

    import border

    record = border.count("fern.toml", work="neck")
    record["works"][0]["rounds"][4]["stitches"]     # {'sc': 16}

`check`, `count`, `close`, `adjust`, `thread` and `write` are what the commands of these names
are; `help(border.count)` tells what they take. They are loaded when first asked for.
"""

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from border.calling import adjust, check, close, count, thread, write

__version__ = "0.1.0"
__all__ = ["adjust", "check", "close", "count", "thread", "write"]


def __getattr__(name: str) -> object:
    if name not in __all__:
        raise AttributeError(f"module 'border' has no attribute {name!r}")
    from border import calling

    return getattr(calling, name)


def __dir__() -> list[str]:
    return sorted({*globals(), *__all__})
