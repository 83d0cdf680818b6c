"""The border language as data: its words, their order, and what they mean."""
