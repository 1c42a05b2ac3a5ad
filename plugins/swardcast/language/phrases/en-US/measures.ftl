# Quantities with their units. Every $number, $across and $along is written out before it stands here.

# metric: mm, m, m2, tonnes, °C. customary: inches, feet, pounds, tons of 2,000 pounds, °F.
language-measures = customary

# Tines, blades, spacings, depths, mowing heights.
measure-length = { $number } in
measure-spacing = { $across } x { $along } in
# Layers of sand.
measure-layer = { $number } in
measure-layer-from-to = { $low } to { $high } in
# Trenches and paths.
measure-distance = { $number } ft
measure-area = { $number } sq ft
# $count is the number once more, for the plural.
measure-sand-mass = { $number } { $count ->
    [one] ton
   *[other] tons
}
measure-sand-rate = { $number } lb per 1,000 sq ft
measure-seed-rate = { $number } lb per 1,000 sq ft
measure-seed-mass = { $number } lb
measure-density = { $number } lb/ft3
measure-temperature = { $number } °F
