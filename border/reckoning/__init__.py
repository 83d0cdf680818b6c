"""Floor 4: what the rows amount to."""
