"""Floor 5: what people and programs see."""
