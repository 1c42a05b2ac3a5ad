### Work on living turf: for each kind of work, what a member reads about it.
### Value: the name as inside a sentence.
### Attributes: what, see, still, day, week, then, why, without, do, q1 and a1 to q5 and a5.
### Slot: $surface, one of green, tee, approach, fairway, rough, bunker, practice-ground, mixed.
### Each message begins with the names of the usual cautions that apply to it.
### Days and figures are computed and stand beside these words, so there are none here.
### `.why` and `.without` stand alone: they may come before `.what`.
### `.see` is read until a week after the work, `.still` from then on until it is over. `.week`, `.then` and `.do` are
### read all the time: they stay true in any week.
### `.q` and `.a` stand on the pages "Why we do this", which are no notices: they say "the notice of the work".
### What the words say of play and of the grass is common practice, where no source is named.

## Questions that several kinds share

asked-how-long = How long until it is back to normal?
    .answer = The notice of the work says what we expect. Grass heals only as fast as it grows, so the weather can move the date.
    .answer-sand = The notice of the work says what we expect. Sand works in with rain, brushing and growth, so the weather can move the date.

asked-about-my-ball = May I move my ball out of an aeration hole?
    .answer = Please look under “{ part-the-rules }” in the notice of the work. It says what is in force.

asked-is-it-safe = Is it safe to walk there?
    .answer = The product label, the law and local rules decide that. The notice of the work gives what the label says about people on the course. If you are not sure, keep off and ask the { -course-manager }.

asked-about-my-dog = May I bring my dog?
    .answer = The product label and the club's own rules count. If the notice of the work does not say, please ask the { -course-manager }.

## Sentences that several kinds share: word for word the same, so that a notice can say each of them once

wait-for-us = You may have to wait while we work.

whether-to-keep-off = Whether you must keep off, and for how long, is for the product label to say.

follow-the-signs = Please follow the signs and the words of the product label.

care-for-the-turf =
    { $surface ->
        [green] Please repair your { -pitch-marks }.
        [tee] Please take practice swings beside the tee.
        [approach] Please repair your { -pitch-marks } and put divots back.
        [practice-ground] Please play only from where the markers stand.
        [mixed] Please repair your { -pitch-marks } and put divots back.
       *[other] Please put divots back.
    }

leave-the-holes-to-us = Leave the aeration holes to us.

keep-wheels-off =
    { $surface ->
        [green] Keep { -trolleys } and { -buggies } away from the green.
        [tee] Keep { -trolleys } and { -buggies } off the tee.
       *[other] Keep { -trolleys } and { -buggies } off the ground that we have worked on.
    }

lift-your-feet = Lift your feet, so that you do not scuff the surface.

let-the-machine-finish = Where a machine is at work, let it finish before you play on.

knock-off-the-sand =
    { $surface ->
        [green] Knock any sand off your shoes when you leave the green.
       *[other] Knock any sand off your shoes before you step on a green.
    }

stay-out-of-the-spray = Stay out of the spray.

## Tines: spikes that go into the ground

# cautions: keep-clear footing
# a2: small tines need 3 to 4 rounds a year, and sand bridges over small holes: B. Whitlark, "Get the most bang for
# your buck when cultivating greens", USGA Green Section, 28 September 2009, and M. Woods, "Core aeration of putting
# greens ... how much is enough?", Asian Turfgrass Center, 2009. a4: that the eye guesses much higher: C. Hartwiger and
# P. O'Brien, "Core aeration by the numbers", USGA Green Section Record 39, 2001, pages 8 and 9; why it does: judgement.
kind-hollow-tining = { -hollow-tining }
    .what = { -hollow-tining(case: "upper") } takes small plugs out of the turf, so that air and water can get in.
    .see = At first you will see rows of small holes, and plugs of soil until we have cleared them. Later you may see only faint dots.
    .still = You may still see rows of small dots where the plugs came out.
    .day =
        { wait-for-us } { $surface ->
            [green] Putts may bump and run off line.
            [tee] The ground may feel soft and uneven under your feet.
            [mixed] Putts may bump, and elsewhere the ball may come to rest in a small hole.
           *[other] The ball may come to rest in a small hole or against a plug.
        }
    .week =
        The small holes close bit by bit as the grass grows. { $surface ->
            [green] Putts run a little truer as they do.
            [tee] The ground gets firmer under your feet as they do.
            [mixed] Putts and lies get better as they do.
           *[other] A clean lie gets easier to find as they do.
        }
    .then =
        { $surface ->
            [green] Once the small holes have closed, putts should run much as before and rain should drain away better.
            [mixed] Once the small holes have closed, play should be much as before and rain should drain away better.
           *[other] Once the small holes have closed, the ground should be firmer and rain should drain away better.
        }
    .why = Old stems build up under the grass in a spongy layer that holds water. We take some of it out, so that the roots get air.
    .without =
        { $surface ->
            [green] Left alone, the greens turn soft and slow, and { -pitch-marks } go deeper.
           *[other] Left alone, the ground turns soft and stays wet for longer after rain.
        }
    .do =
        { $surface ->
            [green] { care-for-the-turf } { leave-the-holes-to-us } { keep-wheels-off }
            [mixed] { care-for-the-turf } { leave-the-holes-to-us } { keep-wheels-off }
           *[other] { care-for-the-turf } { keep-wheels-off }
        }
    .q1 =
        Why do this just when the { $surface ->
            [green] greens are
            [tee] tees are
            [approach] approaches are
            [fairway] fairways are
           *[other] course is
        } good?
    .a1 = Strong grass heals faster. If we waited until it was tired, the small holes would stay open for longer.
    .q2 = Why not make smaller aeration holes?
    .a2 = Smaller ones close earlier but take out less, so we would have to come more often. Where sand is used, they are also harder to fill.
    .q3 = { asked-how-long }
    .a3 = { asked-how-long.answer }
    .q4 = How much of the turf do you take away?
    .a4 = Look under “{ part-in-numbers }” in the notice of the work. Many people guess too high, because the eye sees the small holes and not the grass between.
    .q5 = { asked-about-my-ball }
    .a5 = { asked-about-my-ball.answer }

# cautions: keep-clear footing
kind-solid-tining = { -solid-tining }
    .what = { -solid-tining(case: "upper") } pushes spikes into the turf and takes nothing out.
    .see = At first you will see small holes, and the turf may stand up a little around them. There are no plugs of soil.
    .still = You may still see small dots where the spikes went in.
    .day =
        { wait-for-us } { $surface ->
            [green] Putts may bump a little.
            [tee] The ground may feel a little uneven under your feet.
            [mixed] Putts may bump a little, and elsewhere the ball may come to rest in a small hole.
           *[other] The ball may come to rest in a small hole.
        }
    .week = The small holes close as the turf settles and the grass grows. Cold or dry weather slows that down.
    .then =
        { $surface ->
            [green] Once the small holes have closed, putts should run much as before and rain should soak in better.
           *[other] Once the small holes have closed, the turf should look as before and rain should soak in better.
        }
    .why = Feet and machines press the soil hard. The spikes open it, so that air and water can reach the roots.
    .without = Left alone, the ground gets harder, and rain stands on it for longer.
    .do =
        { $surface ->
            [green] { care-for-the-turf } { leave-the-holes-to-us } { lift-your-feet }
            [tee] { care-for-the-turf } { lift-your-feet }
            [mixed] { care-for-the-turf } { leave-the-holes-to-us } { keep-wheels-off }
           *[other] { care-for-the-turf } { keep-wheels-off }
        }
    .q1 = Why are there no plugs to clear up?
    .a1 = These spikes take nothing out, so they disturb play less. They loosen the soil, but the spongy layer of old stems above it stays.
    .q2 = Will it stop the puddles?
    .a2 = It gives rain more ways down into the soil. It does not help where the cause lies deeper, such as a blocked drain.
    .q3 = { asked-how-long }
    .a3 = { asked-how-long.answer }
    .q4 = { asked-about-my-ball }
    .a4 = { asked-about-my-ball.answer }

# cautions: keep-clear
kind-needle-tining = { -needle-tining }
    .what = { -needle-tining(case: "upper") } makes very fine holes in the turf with thin, solid spikes.
    .see = At first you may see pinholes if you look closely. From a few steps away there is little to see.
    .still = From close by you may still see a pinhole here and there.
    .day =
        { wait-for-us } { $surface ->
            [green] After that, most putts should run true.
           *[other] After that, play goes on much as before.
        }
    .week = The pinholes close as the grass grows. Few players notice them.
    .then = Once the pinholes have closed, there should be nothing left to see.
    .why = Fine holes let air and water into the soil at little cost to play. That helps the roots between bigger jobs.
    .without = Left alone, the top of the ground may close up, and then rain soaks in more slowly.
    .do = { let-the-machine-finish } { care-for-the-turf }
    .q1 = Is this the work that leaves big holes in the turf?
    .a1 = No, these spikes are thin and take nothing out.
    .q2 = Why do it, if I can hardly see it?
    .a2 = The gain is below the surface. The fine holes let air and water down to the roots.
    .q3 = Will I notice it when I play?
    .a3 =
        { $surface ->
            [green] Most players do not. Now and then a putt may still bump on the day of the work.
           *[other] Most players do not.
        }

# cautions: keep-clear footing
kind-deep-tining = { -deep-tining }
    .what = { -deep-tining(case: "upper") } drives long spikes far into the ground.
    .see = At first you will see aeration holes, and here and there an edge of turf that has lifted. The ground may look a little uneven.
    .still = You may still see some of the aeration holes. The ground may still be a little uneven.
    .day =
        { wait-for-us } { $surface ->
            [green] Putts may bump, and the green may feel soft.
            [tee] The ground may feel soft and uneven under your feet.
            [mixed] Putts may bump, and elsewhere the ball may come to rest in a small hole.
           *[other] The ground may feel soft, and the ball may come to rest in a small hole.
        }
    .week = The ground settles and the aeration holes close as the grass grows. Until then it may feel softer than usual.
    .then = Once the ground has settled, rain should drain away better.
    .why = Feet and machines make a hard layer deep in the soil over the years. Long spikes break it, so that water can drain and roots can grow down.
    .without = Left alone, the hard layer holds water back, and the ground stays wet for longer after rain.
    .do = { care-for-the-turf } Leave lifted edges to us. { keep-wheels-off }
    .q1 = How is this different from the aeration holes that you make at other times?
    .a1 = These spikes go much deeper. They are meant for a hard layer that other machines do not reach.
    .q2 = Why is the ground soft after the work?
    .a2 = The spikes lift the soil and loosen it. It settles with rain, rolling and time.
    .q3 = { asked-how-long }
    .a3 = { asked-how-long.answer }
    .q4 = { asked-about-my-ball }
    .a4 = { asked-about-my-ball.answer }

# cautions: keep-clear footing dust
kind-sand-injection = sand injection
    .what = Sand injection makes narrow holes in the turf and fills them with sand.
    .see = At first you will see sandy spots or lines, and some loose sand on top. They fade as the grass grows over them.
    .still = You may still see sandy spots or lines where the grass has not grown over them yet.
    .day =
        { wait-for-us } { $surface ->
            [green] Putts may bump, and may run slower on loose sand.
            [tee] Loose sand can slip under your feet.
            [mixed] Putts may run slower on loose sand, and elsewhere the ball may lie on sand.
           *[other] The ball may lie on sand.
        }
    .week = The grass grows over the sand from the sides. Loose sand works its way down with rain and brushing.
    .then = Once the grass has grown over the sand, the ground should be firmer and rain should drain away better.
    .why = Water runs through sand far more easily than through heavy soil. Each narrow hole that is filled with sand gives it a way down.
    .without = Left alone, heavy soil stays wet and soft for longer after rain.
    .do = { care-for-the-turf } { knock-off-the-sand } { keep-wheels-off }
    .q1 = Why not just spread sand on top?
    .a1 = Sand on top stays near the surface. Sand in the narrow holes leads water down to where it can drain away.
    .q2 = Why is there sand left on the grass?
    .a2 = The machine spills a little as it works. It goes down with rain, brushing and growth.
    .q3 = { asked-how-long }
    .a3 = { asked-how-long.answer }

## Blades: cutting into the turf, or taking it off

# cautions: keep-clear
kind-scarifying = { -scarifying }
    .what = { -scarifying(case: "upper") } cuts thin grooves into the turf and lifts out dead growth.
    .see = At first you will see lines, and dead growth until we have cleared it. The grass may look thin and pale until new leaf has grown.
    .still = You may still see faint lines, with grass that is thinner or paler along them.
    .day =
        { wait-for-us } { $surface ->
            [green] Putts may wander along the lines.
            [tee] The turf may tear under your feet.
            [mixed] Putts may wander along the lines, and elsewhere the ball may settle in a groove.
           *[other] The ball may settle in a groove.
        }
    .week = New leaf fills the lines as the grass grows. Until then the surface looks striped.
    .then =
        { $surface ->
            [green] Once the lines have filled, the green should be firmer and the grass finer.
           *[other] Once the lines have filled, the ground should be firmer and the grass cleaner.
        }
    .why = Dead stems and moss gather between the grass and the soil. With less of them, air and water can reach the roots.
    .without = Left alone, dead growth builds up, holds water and invites disease.
    .do =
        { $surface ->
            [green] { care-for-the-turf } { lift-your-feet }
            [tee] { care-for-the-turf } { lift-your-feet }
           *[other] { care-for-the-turf } { keep-wheels-off }
        }
    .q1 = Why does it look so bad?
    .a1 = The blades take out dead growth that filled the gaps. What is left is living grass, and it now has room.
    .q2 = Does it harm the grass?
    .a2 = It is a shock, and some weak plants come out as well. Healthy grass makes new leaf from its base.
    .q3 = { asked-how-long }
    .a3 = { asked-how-long.answer }
    .q4 = Is this the same as { -hollow-tining }?
    .a4 = No, blades clean out the top of the turf. { -hollow-tining(case: "upper") } takes plugs from further down.

# cautions: keep-clear
kind-verticutting = verticutting
    .what = Verticutting trims the grass with thin upright blades.
    .see = At first you may see faint lines. A little cut grass may lie on top until we have cleared it.
    .still = You may still see faint lines where new leaf has not grown yet.
    .day =
        { wait-for-us } { $surface ->
            [green] After that, putts should run much as before.
           *[other] After that, play goes on much as before.
        }
    .week = The lines fade as the grass grows and is cut. You should notice little when you play.
    .then =
        { $surface ->
            [green] Once the lines have faded, the grass should stand upright and the ball should roll truer.
           *[other] Once the lines have faded, the grass should stand upright and be less matted.
        }
    .why =
        { $surface ->
            [green] Grass that is only cut from above leans over and grows sideways. A putt runs straighter on upright grass.
           *[other] Grass that is only cut from above leans over and mats together. Thinned out, it stands upright and lets air in.
        }
    .without =
        { $surface ->
            [green] Left alone, the grass lies over, and putts drift the way it leans.
           *[other] Left alone, the grass lies flat, mats together and wears badly.
        }
    .do = { let-the-machine-finish } { care-for-the-turf }
    .q1 = Is this the same as { -scarifying }?
    .a1 = No, it is lighter and works mostly in the leaf. { -scarifying(case: "upper") } cuts down into the ground.
    .q2 = Why are there lines?
    .a2 = Each blade leaves one. New leaf covers them.
    .q3 = Why not simply cut the grass lower?
    .a3 = Lower cutting strains the plant. It also leaves the grass leaning as it was.

# cautions: keep-clear footing
kind-fraise-mowing = fraise mowing
    .what = Fraise mowing shaves off the top of the turf, so that clean grass grows back from below.
    .see = At first you will see bare soil, and later a thin green cover that thickens.
    .still = You may still see thin or bare spots in the young grass.
    .day =
        Parts may be closed, so please go the way that ropes and signs show. { $surface ->
            [green] Where a green is open, putts do not run true on bare ground.
            [tee] Where a tee is open, the ground is bare under your feet.
           *[other] Where play goes on, your ball may lie on bare ground.
        }
    .week = The ground stays bare for a while before it turns green. The young grass is weak at first.
    .then = Once the grass has filled in, the surface should be firmer, cleaner and more even.
    .why = Moss, weed grasses and a spongy layer of dead stems sit in the top of the turf. We take them out in one go.
    .without = Left alone, moss and weed grasses spread, and the surface turns soft and patchy.
    .do = Please stay off the young grass, as it tears easily. { keep-wheels-off }
    .q1 = Why do something so drastic?
    .a1 = It is for growth that is too thick to pick out. Other work only thins it, and this takes it off at once.
    .q2 = Will the grass really come back?
    .a2 = Stems and roots left below the cut make new shoots. Often new seed is added as well. Warmth and water decide how fast it grows.
    .q3 = { asked-how-long }
    .a3 = { asked-how-long.answer }
    .q4 = May I walk across it?
    .a4 = Please walk around it. New shoots break easily, and every gap has to grow again.

## Sand and seed

# cautions: keep-clear dust footing
# a1: a hole that is not filled to the top leaves a dimple: greenkeepers' reports of 2009 and 2013. a2: damp sand bridges
# over holes and dry sand falls straight in; a4: sand blunts blades at the first cuts, so the turf is rested first.
# Common practice, no published source.
kind-topdressing = topdressing
    .what = Topdressing spreads sand over the turf.
    .see =
        { $surface ->
            [green] The greens look sandy at first.
            [tee] The tees look sandy at first.
            [approach] The approaches look sandy at first.
            [fairway] The fairways look sandy at first.
           *[other] The turf looks sandy at first.
        } You see less of the sand as it works in.
    .still = You may still see some sand between the leaves. It works in with rain, brushing and growth.
    .day =
        { wait-for-us } { $surface ->
            [green] Putts may run slower until the sand has worked in.
            [tee] Loose sand can slip under your feet.
            [mixed] Putts may run slower until the sand has worked in, and elsewhere the ball may lie on sand.
           *[other] The ball may lie on sand.
        }
    .week = The sand works in with rain, brushing and growth. The mower may still pick some up.
    .then =
        { $surface ->
            [green] Once the sand has worked in, the greens should be firmer and putts should run truer.
           *[other] Once the sand has worked in, the ground should be firmer and more level.
        }
    .why = Sand helps to keep the surface firm, level and dry. It fills small hollows, and aeration holes where we have made them.
    .without = Left alone, the surface turns soft and uneven, and water stays on it for longer.
    .do = { care-for-the-turf } { lift-your-feet } { knock-off-the-sand }
    .q1 = Why so much sand?
    .a1 = A thin layer levels small hollows. Where we have made aeration holes, they take far more: one that is not full leaves a dimple.
    .q2 = Does the sand have to be dry?
    .a2 = To fill aeration holes it should be. Damp sand sticks together and lies across them, and dry sand falls straight in.
    .q3 = { asked-how-long }
    .a3 = { asked-how-long.answer-sand }
    .q4 = Why do you wait before you cut the grass?
    .a4 = The mower would pick the sand up again, and sand blunts its blades. So we let the sand settle first.

# cautions: keep-clear dust
# a1, a3: hard brushing, and brushing in heat, bruises the leaf. Common practice, no published source.
kind-brushing-in = brushing in
    .what = Brushing in works sand down between the leaves and into any aeration holes.
    .see = While we work, a brush or a mat goes over the same ground more than once. It may leave streaks of sand at first.
    .still = A little sand may still show after rain or cutting.
    .day =
        { wait-for-us } { $surface ->
            [green] Putts may run slower until the sand is down.
           *[other] Some sand may cling to the ball and to your shoes.
        }
    .week = A little sand may show again after rain or cutting. Then we may brush again.
    .then = Once the sand is down, the surface should be cleaner and more level.
    .why = Sand that lies on the leaf bruises the grass and blunts the mower. Brushing moves it to where it is needed.
    .without = Left alone, the sand lies on top, and aeration holes under it may stay empty.
    .do = { let-the-machine-finish } { knock-off-the-sand }
    .q1 = Why do you go over it so many times?
    .a1 = Each time a little more sand works down. One hard brushing would bruise the leaf.
    .q2 = Why not let the rain do it?
    .a2 = Rain helps in the end. But wet sand sticks together and can lie across aeration holes.
    .q3 = Why do you stop when it is hot?
    .a3 = Brushing in hot weather bruises the grass. It is better to wait, or to start early in the day.

# cautions: keep-clear
kind-overseeding = overseeding
    .what = Overseeding sows new grass into the turf that is there.
    .see = You may see fine lines or small holes where the seed went in. The new shoots are thin and pale at first.
    .still = The new grass may still look finer and paler than the old.
    .day =
        { wait-for-us } { $surface ->
            [green] Putts may bump a little over the lines.
           *[other] After that, play goes on much as before.
        }
    .week =
        Seed needs warm, moist ground to come up. { $surface ->
            [green] We may water more and leave the grass a little longer, so putts may run slower.
           *[other] We may water more and leave the grass a little longer.
        }
    .then = Once the new grass is strong, the turf should be thicker and stand more wear.
    .why = New seed brings in the grasses that we want. It also fills thin places before weeds do.
    .without = Left alone, weaker grasses and weeds fill the gaps.
    .do =
        { $surface ->
            [green] { care-for-the-turf } { lift-your-feet } Young grass tears easily.
            [tee] { care-for-the-turf } { lift-your-feet } Young grass tears easily.
           *[other] { care-for-the-turf } { keep-wheels-off } Young grass tears easily.
        }
    .q1 = Why do I see no new grass yet?
    .a1 = Seed takes time, and cold or dry ground holds it back. The first shoots are as thin as hairs.
    .q2 = Why do you water when the ground looks wet enough?
    .a2 = Seed that dries out once it has begun to grow will die. So the top of the ground has to stay moist.
    .q3 = Why is the grass longer than usual?
    .a3 = Close cutting can pull young plants out. So we may let them grow stronger before we cut as short as usual.
    .q4 = Do birds eat the seed?
    .a4 = They take some. Most of it lies in the ground, where they find less of it.

## Products: what the label says counts, and the notice carries those words as typed

# cautions: keep-clear label
kind-granular-feed = granular { -feed }
    .what = Granular { -feed } gives the grass its food in small grains.
    .see = You may see fine grains on the grass until water has dissolved them. The grass may turn a deeper green.
    .still = The grass may look a deeper green for a while.
    .day = { wait-for-us } { whether-to-keep-off }
    .week = The grains dissolve and the grass should grow more. We may have to cut it more often.
    .then = Once the grass has taken up the food, it should be thicker and heal faster.
    .why = Play, cutting and other work take strength out of the grass. Food helps it to grow and to heal.
    .without = Left without food, the grass turns thin and pale and is slow to heal.
    .do = { follow-the-signs } Try not to carry grains away on your shoes.
    .q1 = { asked-is-it-safe }
    .a1 = { asked-is-it-safe.answer }
    .q2 = Why feed grass that grows anyway?
    .a2 = Every cut takes leaf away, and food with it. We put some of that back.
    .q3 = Why are the grains still there?
    .a3 = They need water to dissolve. Rain or watering takes them into the ground.
    .q4 = { asked-about-my-dog }
    .a4 = { asked-about-my-dog.answer }

# cautions: keep-clear label
kind-liquid-feed = liquid { -feed }
    .what = Liquid { -feed } gives the grass its food in water, sprayed on.
    .see = While we work, you will see a sprayer go over the turf. The grass may look wet or tinted until it has dried.
    .still = The grass may look a fresher green for a while.
    .day = { wait-for-us } { whether-to-keep-off }
    .week = The grass may look a fresher green. Play goes on much as before.
    .then = Once the grass has taken up the food, it should be a little stronger and wear better.
    .why = A little food at a time keeps the grass growing evenly. Even growth makes an even surface.
    .without = Left without food, the grass turns thin and shows wear earlier.
    .do = { follow-the-signs } { stay-out-of-the-spray }
    .q1 = { asked-is-it-safe }
    .a1 = { asked-is-it-safe.answer }
    .q2 = Are you spraying against weeds?
    .a2 = Not with this. It is food for the grass, mixed with water.
    .q3 = Why give so little at a time?
    .a3 = A lot at once makes the grass shoot up and turn soft. A little keeps it steady.
    .q4 = { asked-about-my-dog }
    .a4 = { asked-about-my-dog.answer }

# cautions: keep-clear label
kind-wetting-agent = wetting agent
    .what = A wetting agent is a product that helps water to soak into dry soil.
    .see = While we work, you will see a sprayer go over the turf, and perhaps some foam. Often the turf is watered after that.
    .still = Some dry patches may still look pale until new leaf has grown.
    .day = { wait-for-us } { whether-to-keep-off }
    .week = Dry patches should take in water better, bit by bit. Some stay pale until new leaf has grown.
    .then = Once it has worked, the ground should be more evenly moist, with fewer dry patches.
    .why = Some soils shed water once they have dried out, like a waxed coat. A wetting agent helps water to get in again.
    .without = Left alone, dry patches spread, turn brown and play unevenly.
    .do = { follow-the-signs } { stay-out-of-the-spray }
    .q1 = Why not simply water more?
    .a1 = Water runs off a dry patch and ends up where the ground is wet already. More of it only makes those places soft.
    .q2 = { asked-is-it-safe }
    .a2 = { asked-is-it-safe.answer }
    .q3 = Why are some patches still brown?
    .a3 = Leaf that has died does not turn green again. New leaf has to cover it.
    .q4 = { asked-about-my-dog }
    .a4 = { asked-about-my-dog.answer }

# cautions: keep-clear label
kind-plant-protection = plant protection
    .what = Plant protection treats the turf with a pesticide, a product against disease, weeds or pests.
    .see = While we work, you may see a sprayer and signs. The grass may look wet until it has dried.
    .still = Marks of disease or dead weeds may still show until new grass has grown over them.
    .day = Parts of the course may be closed to you for a time. { whether-to-keep-off }
    .week = Marks of disease or dead weeds may still show. New grass has to grow over them.
    .then = Once the treatment has worked, the grass can fill the gaps again.
    .why = Disease, weeds and pests can kill turf over a wide area. A product can help to hold them back.
    .without = Left alone, the damage can spread and leave bare ground.
    .do = { follow-the-signs } { stay-out-of-the-spray } If anything is not clear, ask the { -course-manager } before you play there.
    .q1 = { asked-is-it-safe }
    .a1 = { asked-is-it-safe.answer }
    .q2 = Who does this work?
    .a2 = Where the law asks for a licensed person, it is that person's work. Local rules and the product label say how it must be done.
    .q3 = Could you do without it?
    .a3 = Healthy turf needs less of it. Whether it is needed is for the { -course-manager } to judge, within the law.
    .q4 = What are you using?
    .a4 = The notice of the work says what is used. If you want to know more, please ask the { -course-manager }.
    .q5 = { asked-about-my-dog }
    .a5 = { asked-about-my-dog.answer }

## Rolling

# cautions: keep-clear
kind-rolling = rolling
    .what = Rolling presses the surface smooth.
    .see = While we work, a roller goes back and forth. It may leave light and dark stripes.
    .still = Light and dark stripes may still show until the grass has grown on.
    .day =
        { wait-for-us } { $surface ->
            [green] After that, putts should run smoother and may run a little faster.
           *[other] After that, the ground should be smoother and firmer.
        }
    .week =
        The effect wears off as the grass grows. { $surface ->
            [green] Putts go back to their usual pace.
           *[other] The stripes fade with it.
        }
    .then =
        { $surface ->
            [green] Once the effect has worn off, putts should run at their usual pace.
           *[other] Once the effect has worn off, the turf should look as it did before.
        }
    .why =
        { $surface ->
            [green] A roller levels small bumps, loose sand and the edges of aeration holes. The ball runs truer on a smooth surface.
           *[other] A roller levels small bumps, loose sand and the edges of aeration holes. Level ground is better to stand on and to cut.
        }
    .without =
        { $surface ->
            [green] Left alone, small bumps stay for longer and turn putts off line.
           *[other] Left alone, small bumps stay for longer and the mower cuts into them.
        }
    .do = { let-the-machine-finish } { care-for-the-turf }
    .q1 = Does the roller press the soil too hard?
    .a1 = It can, on wet ground or if it is done too often. So we look at the ground before we roll.
    .q2 =
        { $surface ->
            [green] Will the greens be faster?
           *[other] Why not let it settle by itself?
        }
    .a2 =
        { $surface ->
            [green] Often a little, until the grass has grown on. Weather and cutting count as well.
           *[other] It would settle, but not evenly. Rolling keeps it level.
        }
    .q3 = Does rolling take the place of cutting?
    .a3 = No, a roller smooths the grass and a mower shortens it. Now and then we may roll on a day when we do not cut.
