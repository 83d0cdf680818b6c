"""What frames the rows: heads, headings, clauses, copies, figures explained."""
