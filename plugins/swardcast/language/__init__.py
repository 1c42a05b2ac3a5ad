"""Languages: catalogues of phrases, and a voice that says phrases, dates and numbers in one of them."""
