"""Floor 4: what a border needs of its edge, and where it is eased in so that it closes."""
