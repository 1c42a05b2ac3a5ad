"""Files of a club folder -> records, with every problem collected: file, line, field, found, expected."""
