"""Floor 2: a yoke becomes edges."""
