"""Floor 5: what the rows amount to."""
