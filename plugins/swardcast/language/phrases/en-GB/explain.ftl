# Sums with lengths in mm inside. $formula, $surplus, $depth, $width and $rate are numbers of mm.

explain-opening = { $kind }: { $formula } = { $share } of the surface.
    .in-part = { $kind }: { $formula } = { $share } of the surface, of which { $lasting } counts ({ $tool ->
        [tines] nothing is taken out
       *[blades] a shallow cut
    }).
explain-sand-stays = Sand: { $spread } spread, { $inside } fits into holes and grooves, { $on_top } stays on top and hides { $hidden } of the leaf (1 - exp(-{ $surplus } / { $depth }); bulk density { $density }). It works in at { $settling } per growth day.
explain-open-holes = Open holes and grooves count as { $share } of the surface in play, whatever their spacing. They close at { $rate } / { $width } per growth day: a wide hole takes longer.
grass-annual-meadow-grass = annual meadow-grass
