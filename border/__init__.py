"""A row-by-row border stitch compiler and counter."""

__version__ = "0.1.0"
