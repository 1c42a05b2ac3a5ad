# $lag: days in words.
sums-lag = Add { $lag } for the height of cut and the feed to come back: about { $day }.
