# A share of a hundred.
percent = { $number }%
