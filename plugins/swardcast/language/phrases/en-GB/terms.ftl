### Words of the trade that differ between the Englishes: British use.
### Inside a sentence: { -trolleys }. As first word: { -trolleys(case: "upper") }.
### The same terms stand in the other English; a term added here is added there.

## Kinds of work

-hollow-tining =
    { $case ->
       *[lower] hollow tining
        [upper] Hollow tining
    }

-solid-tining =
    { $case ->
       *[lower] solid tining
        [upper] Solid tining
    }

-needle-tining =
    { $case ->
       *[lower] needle tining
        [upper] Needle tining
    }

-deep-tining =
    { $case ->
       *[lower] deep tining
        [upper] Deep tining
    }

-scarifying =
    { $case ->
       *[lower] scarifying
        [upper] Scarifying
    }

-returfing =
    { $case ->
       *[lower] re-turfing
        [upper] Re-turfing
    }

-feeding =
    { $case ->
       *[lower] feeding
        [upper] Feeding
    }

## Things

-hollow-tines =
    { $case ->
       *[lower] hollow tines
        [upper] Hollow tines
    }

# The piece that is cut, carried and laid; the living surface is turf in both Englishes and needs no term.
-turf =
    { $case ->
       *[lower] turf
        [upper] Turf
    }

-turves =
    { $case ->
       *[lower] turves
        [upper] Turves
    }

-feed =
    { $case ->
       *[lower] feed
        [upper] Feed
    }

-pitch-marks =
    { $case ->
       *[lower] pitch marks
        [upper] Pitch marks
    }

-trolleys =
    { $case ->
       *[lower] trolleys
        [upper] Trolleys
    }

-buggies =
    { $case ->
       *[lower] buggies
        [upper] Buggies
    }

-ear-defenders =
    { $case ->
       *[lower] ear defenders
        [upper] Ear defenders
    }

-path =
    { $case ->
       *[lower] path
        [upper] Path
    }

-paths =
    { $case ->
       *[lower] paths
        [upper] Paths
    }

-height-of-cut =
    { $case ->
       *[lower] height of cut
        [upper] Height of cut
    }

-autumn =
    { $case ->
       *[lower] autumn
        [upper] Autumn
    }

## People

-greenkeeper =
    { $case ->
       *[lower] greenkeeper
        [upper] Greenkeeper
    }

# Plural in both Englishes, so that a verb or an article beside it stays right.
-greenkeepers =
    { $case ->
       *[lower] greenkeepers
        [upper] Greenkeepers
    }

-course-manager =
    { $case ->
       *[lower] course manager
        [upper] Course manager
    }
