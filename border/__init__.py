"""A row-by-row border stitch compiler and counter."""
