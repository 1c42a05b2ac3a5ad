# Quantities with their units. Every $number, $across and $along is written out before it stands here.

# metric: mm, m, m2, tonnes, °C. customary: inches, feet, pounds, tons of 2,000 pounds, °F.
language-measures = metric

# Tines, blades, spacings, depths, heights of cut.
measure-length = { $number } mm
measure-spacing = { $across } x { $along } mm
# Layers of sand.
measure-layer = { $number } mm
measure-layer-from-to = { $low } to { $high } mm
# Trenches and paths.
measure-distance = { $number } m
measure-area = { $number } m2
# $count is the number once more, for the plural.
measure-sand-mass = { $number } { $count ->
    [one] tonne
   *[other] tonnes
}
measure-sand-rate = { $number } kg on a square metre
measure-seed-rate = { $number } g on a square metre
measure-seed-mass = { $number } kg
measure-density = { $number } t/m3
measure-temperature = { $number } °C
