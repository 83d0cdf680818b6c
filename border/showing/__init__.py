"""Floor 6: what people and programs see."""
