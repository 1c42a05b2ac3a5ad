"""Bulletin -> artifacts: finished files of bytes, each valid by its standard."""
