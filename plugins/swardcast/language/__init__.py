"""Languages: catalogues of phrases, a voice that says them, dates and numbers; and how plain a text is."""
