### Words of the trade that differ between the Englishes: American use.
### Inside a sentence: { -trolleys }. As first word: { -trolleys(case: "upper") }.
### The same terms stand in the other English; a term added here is added there.

## Kinds of work

-hollow-tining =
    { $case ->
       *[lower] core aeration
        [upper] Core aeration
    }

-solid-tining =
    { $case ->
       *[lower] solid-tine aeration
        [upper] Solid-tine aeration
    }

-needle-tining =
    { $case ->
       *[lower] needle-tine aeration
        [upper] Needle-tine aeration
    }

-deep-tining =
    { $case ->
       *[lower] deep-tine aeration
        [upper] Deep-tine aeration
    }

-scarifying =
    { $case ->
       *[lower] dethatching
        [upper] Dethatching
    }

-returfing =
    { $case ->
       *[lower] resodding
        [upper] Resodding
    }

-feeding =
    { $case ->
       *[lower] fertilizing
        [upper] Fertilizing
    }

## Things

-hollow-tines =
    { $case ->
       *[lower] coring tines
        [upper] Coring tines
    }

# The piece that is cut, carried and laid; the living surface is turf in both Englishes and needs no term.
-turf =
    { $case ->
       *[lower] sod
        [upper] Sod
    }

-turves =
    { $case ->
       *[lower] pieces of sod
        [upper] Pieces of sod
    }

-feed =
    { $case ->
       *[lower] fertilizer
        [upper] Fertilizer
    }

-pitch-marks =
    { $case ->
       *[lower] ball marks
        [upper] Ball marks
    }

-trolleys =
    { $case ->
       *[lower] push carts
        [upper] Push carts
    }

-buggies =
    { $case ->
       *[lower] golf carts
        [upper] Golf carts
    }

-ear-defenders =
    { $case ->
       *[lower] ear protection
        [upper] Ear protection
    }

-path =
    { $case ->
       *[lower] cart path
        [upper] Cart path
    }

-paths =
    { $case ->
       *[lower] cart paths
        [upper] Cart paths
    }

-height-of-cut =
    { $case ->
       *[lower] mowing height
        [upper] Mowing height
    }

-autumn =
    { $case ->
       *[lower] fall
        [upper] Fall
    }

## People

-greenkeeper =
    { $case ->
       *[lower] crew member
        [upper] Crew member
    }

# Plural in both Englishes, so that a verb or an article beside it stays right.
-greenkeepers =
    { $case ->
       *[lower] crew members
        [upper] Crew members
    }

-course-manager =
    { $case ->
       *[lower] superintendent
        [upper] Superintendent
    }
