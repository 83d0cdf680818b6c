"""Rows told by their squares."""
