### What competitions and visitors' days meet of a job; fixtures-heading is in the folders of the two Englishes.

# $name as the club's calendar has it
fixture-day = { $name }, { $day }
fixture-day-time = { $name }, { $day }, { $time }
fixture-days = { $name }, { $first } to { $last }
# Several that meet the same. $first and $last are named as above; $count of those after the first.
fixtures-more = { $first }, and { $count } more up to { $last }

fixtures-computed = Each chance is for the morning of that day, or of the first day. It changes with the weather and the work.
fixtures-usual-range = No chance is computed here: we go by the usual time for such work.
fixtures-not-known = How the healing goes on cannot be computed here, so only the days of the work are looked at.

## Whole sentences. $who: "tee 1", or of several surfaces "some greens"; $count of surfaces.

# On the course status; $met: what it meets, a sentence or two
fixtures-of-job = { $job }: { $met }
fixtures-some = some { $surfaces }
fixtures-some-surfaces = some surfaces

# Before the range of the opening; within it fixtures-perhaps-closed. $play: how the surfaces are until then
fixtures-closed = { $play ->
    [temporary-green] { $count ->
        [one] { $who } will still be on a temporary green then.
       *[other] { $who } will still be on temporary greens then.
    }
   *[closed] { $count ->
       *[other] { $who } will still be closed then.
    }
}
# Of work that nobody has reported as begun
fixtures-closed-by-plan = { $play ->
    [temporary-green] { $count ->
        [one] as planned, { $who } will be on a temporary green then.
       *[other] as planned, { $who } will be on temporary greens then.
    }
   *[closed] { $count ->
       *[other] as planned, { $who } will be closed then.
    }
}
fixtures-perhaps-closed = { $play ->
    [temporary-green] { $count ->
        [one] { $who } may still be on a temporary green then.
       *[other] { $who } may still be on temporary greens then.
    }
   *[closed] { $count ->
       *[other] { $who } may still be closed then.
    }
}
# Of work held up before it began
fixtures-closed-if-it-goes-on = { $play ->
    [temporary-green] { $count ->
        [one] { $who } may be on a temporary green then, if the work goes on.
       *[other] { $who } may be on temporary greens then, if the work goes on.
    }
   *[closed] { $count ->
       *[other] { $who } may be closed then, if the work goes on.
    }
}
fixtures-in-work-as-planned = in the days of the work as planned.
fixtures-in-work-as-it-stands = in the days of the work as it stands now.
fixtures-in-work-if-held-up = in the days of the work if weather holds it up. Otherwise { $state }.

## States, without a full stop: a sentence of their own, or after "otherwise"

fixtures-healing-not-known = { $count ->
    [one] it is not known how far { $who } is healed
   *[other] it is not known how far { $who } are healed
}
fixtures-not-normal = { $count ->
    [one] { $who } is not expected to be back to normal by then
   *[other] { $who } are not expected to be back to normal by then
}
fixtures-perhaps-not-normal = { $count ->
   *[other] { $who } may not be back to normal by then
}
fixtures-normal = { $count ->
   *[other] { $who } should be back to normal by then
}
fixtures-nothing-to-heal = nothing is left to heal
# $chance: "about 3 chances in 10"; other work may heal on the same surfaces, with a chance of its own
fixtures-healing = { $count ->
    [one] { $chance } that { $who } is still healing from this work
   *[other] { $chance } that { $who } are still healing from this work
}
# $healing: fixtures-healing; $turning: the chance of the putts, with a capital, where it is another
fixtures-but-putts-roll-true = { $healing }, but most putts should roll true
fixtures-and-putts-turn = { $healing }, and that putts still turn
fixtures-putts-turn = { $healing }. { $turning } that putts still turn
