# The part "In numbers" of a notice: names, and what stands beside them. Lengths, masses and shares come with their unit.

numbers-seed = Seed
numbers-sand = Sand
numbers-holes = Aeration holes
numbers-layer = As a layer

# $kind is the kind of work, with a capital.
numbers-work = { $passes ->
    [one] { $kind }
   *[other] { $kind }, { $passes } passes
}
numbers-tined = aeration holes { $width } wide, { $depth } deep, { $spacing } apart: { $share } of the surface
numbers-grooved = grooves { $width } wide, { $depth } deep, { $spacing } apart: { $share } of the surface
numbers-stripped = { $depth } deep on { $share } of the surface
# $seed is what the club typed.
numbers-seeded = { $seed }, { $rate }

numbers-in-each-bunker = { $mass } in each bunker
numbers-on-each-surface = { $mass } on each surface
numbers-in-all = { $mass } in all
numbers-deep = { $depth } deep
numbers-holes-of-several = { $each } on each surface on average, { $all } in all
numbers-sand-of-one = { $mass } in all (dry sand of { $density })
numbers-sand-of-several = { $mass } in all, { $each } on each surface on average (dry sand of { $density })
numbers-layers = { $inside } goes down into the turf, { $on_top } stays on top at first
numbers-layer-inside = { $inside }, all of it down in the turf

# Work of which nothing is computed: only the sizes that the club typed are said, in a row.
numbers-wide = { $width } wide
numbers-apart = { $spacing } apart
numbers-long = { $length } long
numbers-injected-holes = narrow holes { $sizes }
numbers-injected-sand = sand, { $sand }
# $words is what the club typed.
numbers-watered-in = watered in: { $words }
numbers-trench = Trench
numbers-height = { -cutting-height }
numbers-height-to = to { $after }
numbers-height-from-to = from { $before } to { $after }
