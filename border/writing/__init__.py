"""The border written out for one edge, so that it reads back to the same work."""
