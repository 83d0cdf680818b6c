"""Floor 4: what a border asks of its edge, and how a piece of work is fitted to it."""
