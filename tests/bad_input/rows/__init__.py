"""The corpus, by what was broken."""
