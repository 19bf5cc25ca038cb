"""A pattern file in, rows out; nothing is proven here."""
