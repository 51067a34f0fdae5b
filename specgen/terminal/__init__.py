"""What commands print: reports, manuals, field pages, starters."""
