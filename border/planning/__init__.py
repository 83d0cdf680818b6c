"""Planning: where a border is eased in so that every round closes, and what it needs."""
