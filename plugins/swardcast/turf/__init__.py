"""The science: pure functions on numbers and arrays; knows no club, no file and no clock."""
