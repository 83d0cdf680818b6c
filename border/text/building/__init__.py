"""A parse becomes the steps of the tree."""
