# Numbers, amounts and places.

about = about { $number }

# $count: how many holes
numbered = { $count ->
   *[other] { $kind } { $holes }
}
# "6 bunkers": $kind is in the form that goes with the count
counted = { $count } { $kind }
# "2 of 6 bunkers": $kind is in the form that goes with the count
counted-of = { $some } of { $count } { $kind }
# $counted: "6 bunkers"; $holes: "4, 7 and 11"; $count of holes
counted-on-holes = { $counted } on { $count ->
    [one] hole { $holes }
   *[other] holes { $holes }
}
holes-from-to = { $first } to { $last }
surface-green = { $count ->
    [one] green
   *[other] greens
}
surface-tee = { $count ->
    [one] tee
   *[other] tees
}
surface-approach = { $count ->
    [one] approach
   *[other] approaches
}
surface-fairway = { $count ->
    [one] fairway
   *[other] fairways
}
surface-rough = { $count ->
    [one] rough
   *[other] roughs
}
surface-bunker = { $count ->
    [one] bunker
   *[other] bunkers
}
surface-practice-ground = { $count ->
    [one] practice ground
   *[other] practice grounds
}
