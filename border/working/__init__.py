"""Floor 3: the readings are worked into an edge, row by row."""
