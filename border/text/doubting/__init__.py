"""What the steps of a row may mean besides, asked."""
