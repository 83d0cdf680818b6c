"""Floor 1: a border text becomes a tree, and the tree its readings."""
