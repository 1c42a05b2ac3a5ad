"""An outlook in plain language: phrase tables, dates and amounts in words, notices, messages."""
