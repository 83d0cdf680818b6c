"""Questions: how a row that does not come out may be meant, or misprinted.

Books differ in what some words mean, and have misprints. Where a row does not
close on its edge, or not as its own count says, the other meanings of its words
are worked in its place (`otherwise`), and what is one word away from it
(`slips`). What comes out is told as a possibility (`asking`), never taken.
"""
