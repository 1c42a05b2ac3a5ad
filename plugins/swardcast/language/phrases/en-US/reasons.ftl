# $title: a job whose surfaces are back to normal. $taken: days that took, $computed: days that the sum gives.
reason-learnt-from-healed-jobs = Learned from earlier work ({ $title }: { $taken ->
    [one] { $taken } day
   *[other] { $taken } days
}, computed { $computed }).

# What holds growth back; the rest stands in the folder of both Englishes.
brake-dull-weather = cloudy weather
brake-unfed = not fertilized
