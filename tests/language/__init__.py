"""How plain a text is, and words to avoid."""
