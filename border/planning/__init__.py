"""Floor 4: what a border asks of its edge, and where a piece of work is eased in to fit it."""
