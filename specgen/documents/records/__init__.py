"""The site record as documents: forms filled with what was recorded, nonconformances, trends."""
