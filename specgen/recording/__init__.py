"""What the entries of the site record say: their order, what dries until when, the history of a panel."""
