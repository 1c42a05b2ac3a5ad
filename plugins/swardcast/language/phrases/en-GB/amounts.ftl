# A share of a hundred.
percent = { $number }{ "\u00A0" }%
