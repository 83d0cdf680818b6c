"""Rows that copy other rows, all of one or a part, and what they have otherwise."""
