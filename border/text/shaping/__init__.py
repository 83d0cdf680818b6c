"""What stands together becomes one thing, and stands as the grammar has it."""
