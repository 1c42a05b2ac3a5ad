"""Shell 2: the command line, one small module for each command."""
