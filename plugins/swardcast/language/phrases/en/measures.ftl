# Quantities with their units: what both Englishes share.

# Parts of an inch: 1/2, and 1 1/2.
measure-fraction = { $top }/{ $bottom }
measure-mixed-number = { $whole } { $fraction }
# Less than a layer's smallest step; the layer in $step with its unit.
measure-less-than = less than { $step }

# How far a ball rolls off the ramp of a speed meter: feet and inches everywhere.
measure-roll = { $feet } ft { $inches } in
