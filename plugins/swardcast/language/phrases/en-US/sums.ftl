# $lag: days in words.
sums-lag = Add { $lag } for the mowing height and the fertilizing to come back: about { $day }.
