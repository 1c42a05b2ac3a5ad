### Kinds of work on the course: cutting height, new turf and seed, bunkers, water, trees, paths and winter.
### Variable: $surface, the kind of surface (green, tee, approach, fairway, rough, bunker, practice-ground, mixed).
### What is said of grass, sand and soil is common practice, no published source, where no source stands above.
### A phrase holds no date, no promise, and nothing about relief under the Rules of Golf.

# Asked of all work that ropes off ground; what the Rules give stands in the notice of the work.
asked-about-roped-ground = What if my ball lies inside the ropes?
    .answer = Please do not cross the ropes to get it. Look under “{ part-the-rules }” in the notice of the work.

# Said of all work in bunkers, word for word the same, so that a notice can say it once.
where-the-bank-is-low = Walk in and out where the bank is low.

# cautions: keep-clear
kind-change-of-cutting-height = change of { -cutting-height }
    .what = We set the mowers to cut the grass higher or lower than before.
    .see =
        { $surface ->
            [green] The greens may look a little paler or a little darker. Nothing is dug up or opened.
           *[other] The grass may look a little paler or a little darker. Nothing is dug up or opened.
        }
    .still = The grass may still look a little paler or a little darker than before.
    .day =
        { $surface ->
            [green] Putts may run a little slower or faster than the day before.
            [tee] Play goes on as usual. The grass on the tee may feel a little longer or shorter.
            [rough] A ball may sit deeper, or be easier to find, than the day before.
           *[other] Your ball may sit up a little more, or lie a little closer to the ground.
        }
    .week = Grass takes time to get used to a new height. Changes in small steps do it the least harm.
    .then =
        { $surface ->
            [green] Once the grass is used to the new height, the pace of putts should be steady again.
           *[other] Once the grass is used to the new height, it should grow on as before.
        }
    .why = Short grass is under more strain than long grass. So we match the height to the season and to what the grass can bear.
    .without = Grass that is cut too short for the season grows thin, and long grass turns soft and heavy.
    .do =
        { $surface ->
            [green] Take a few practice putts before you start. Judge the pace afresh on the first holes.
           *[other] Play as you always do. Tell us if a spot looks torn or scraped by the mower.
        }
    .q1 = Why not keep one height all year?
    .a1 = Grass grows fast in some months and hardly at all in others. One height would be wrong for part of the year.
    .q2 = Will it do the grass harm?
    .a2 = A big change at once can. Small steps give the grass time to make new leaf.
    .q3 = Who sets the height?
    .a3 = The { -course-manager } does, by the season and by the state of the grass.

# cautions: keep-clear new-turf footing ropes
kind-re-turfing = { -returfing }
    .what = We take up worn grass, roots and all, and lay new { -turf } in its place.
    .see = At first you will see ropes around the area, and thin lines between the { -turves }. The new grass may look lighter or darker than the old.
    .still = You may still see thin lines between the { -turves }. The new grass may look lighter or darker than the old.
    .day =
        { $surface ->
            [green] We rope off the part that we lay. The hole is cut elsewhere, or you play to a temporary green.
            [tee] We rope off the part that we lay. The tee markers stand somewhere else.
           *[other] We rope off the part that we lay. Please walk around it.
        }
    .week = New { -turf } has to grow roots before it can bear weight. The lines show until grass has grown across them.
    .then = Once it has rooted, the new grass should stand up to feet and mowers like the grass around it.
    .why = Some ground is too worn for seed alone. New { -turf } covers it at once and then takes root.
    .without = Left alone, worn ground gets barer, wetter and less even each season.
    .do = Please stay outside the ropes. Take { -trolleys } and { -buggies } well around them.
    .q1 = Why not just sow seed?
    .a1 = Seed needs longer before it can stand wear. On a slope, rain can wash it away.
    .q2 = When can we walk on it?
    .a2 = When the roots hold. We lift a corner by hand: if it comes up, it is not ready.
    .q3 = Why does it look different?
    .a3 = It was grown in another place and in other soil. It looks more like the rest as it settles in.
    .q4 = { asked-how-long }
    .a4 = { asked-how-long.answer }
    .q5 = { asked-about-roped-ground }
    .a5 = { asked-about-roped-ground.answer }

# cautions: keep-clear footing ropes
# Warmth that seed needs: Purdue Turf, "Turf 101: optimum temperatures for seed germination". Kinds of grass
# that come up sooner or later: a seed merchant's page on establishment (trade, not research).
kind-seeding-bare-ground = seeding bare ground
    .what = We loosen bare ground, sow grass seed in it and keep it damp.
    .see = At first you will see raked soil, and later fine green shoots. Ropes or a cover may keep feet and wheels off.
    .still = The young grass may still look thin or pale. Ropes or a cover may still keep feet and wheels off.
    .day =
        { $surface ->
            [green] We keep feet and wheels off the spot. A putt that crosses it may turn or slow down.
            [tee] We keep feet and wheels off the spot. The tee markers stand somewhere else.
           *[other] We keep feet and wheels off the spot. Please walk around it.
        }
    .week = Young grass has short roots and tears easily. It needs damp soil, so you may see us water it often.
    .then = Once the young grass is thick, it should stand up to feet and mowers.
    .why = Bare soil turns to mud in the wet and to dust in the dry. Grass holds it together.
    .without = Left alone, bare ground fills with weeds and moss.
    .do = Walk around the seeded ground, even where there is no rope. Take { -trolleys } and { -buggies } another way.
    .q1 = Why is nothing coming up yet?
    .a1 = Seed waits until it is warm and damp enough. Some kinds of grass come up later than others.
    .q2 = Why not lay { -turf }?
    .a2 = With seed we can choose the grass that suits the spot, and it costs less. It does take more patience.
    .q3 = Will the birds not eat it?
    .a3 = They take some. We cover most of it with a little soil, so that they find less of it.
    .q4 = { asked-how-long }
    .a4 = { asked-how-long.answer }
    .q5 = { asked-about-roped-ground }
    .a5 = { asked-about-roped-ground.answer }

# cautions: keep-clear footing dust lifting
kind-bunker-re-sanding = bunker re-sanding
    .what = We take old sand out of a bunker and put new sand in.
    .see = While we work, you will see piles of sand and the tracks of machines. After that you will see clean, even sand.
    .still = The new sand may still look brighter than the sand of other bunkers.
    .day = The bunker may be empty, half full or roped off. Machines come and go, so wait until we wave you on.
    .week = New sand is soft until it has packed down, and a ball may bury. Rain, raking and play make it firmer.
    .then = Once the sand has packed down, most balls should sit up on it.
    .why = Over the years, soil, stones and leaves get into the sand. Then it holds water, and the ball lies badly.
    .without = Left alone, the sand gets dirtier, and water stands in it for longer after rain.
    .do = { where-the-bank-is-low } Rake the sand smooth behind you.
    .q1 = Why is the new sand so soft?
    .a1 = The grains have not packed together yet. Rain and raking help them to.
    .q2 = Why not put new sand on top of the old?
    .a2 = The dirty sand below would still hold the water. The bunker would also fill up and lose its shape.
    .q3 = Why are some bunkers firmer than others?
    .a3 = Their sand has had more rain and more raking. The others should get firmer in the same way.
    .q4 = { asked-about-roped-ground }
    .a4 = { asked-about-roped-ground.answer }

# cautions: keep-clear footing lifting
kind-bunker-liner = bunker lining
    .what = We lay a liner, which is a layer that keeps the sand and the soil below it apart.
    .see = At first you will see the bunker without sand, and the liner on its floor and sides. Then the sand goes in on top.
    .still = There is little left to see, since the liner lies under the sand.
    .day = The bunker may be empty or roped off. Machines come and go, so wait until we wave you on.
    .week = Sand that has been moved is soft until it has packed down, and a ball may bury. Rain, raking and play make it firmer.
    .then = Once the sand has packed down, it should drain faster after rain and stay better on the slopes.
    .why = Stones and soil work their way up into the sand. Heavy rain also washes sand off the slopes.
    .without = Without a liner, stones keep coming up, and we have to change the sand more often.
    .do = { where-the-bank-is-low } Feet on the steep sides push the sand down.
    .q1 = What is a liner made of?
    .a1 = Some are a strong cloth. Others are a layer that sets hard and still lets water through.
    .q2 = Can my club hit it?
    .a2 = The sand above it should be deep enough for a normal shot. Please tell us if you see or touch the liner.
    .q3 = Why does it take so long?
    .a3 = Each bunker has to be emptied, shaped, lined and filled again. Rain can stop each of these steps.
    .q4 = { asked-about-roped-ground }
    .a4 = { asked-about-roped-ground.answer }

# cautions: keep-clear footing
kind-bunker-edging = bunker edging
    .what = We cut the grass at the edge of a bunker back to a clean line.
    .see = At first you will see a sharp, fresh edge. Strips of cut grass may lie beside it until we clear them.
    .still = The edge may still look freshly cut until grass has grown along it.
    .day = We work close to the sand with hand tools or small machines. Please wait until we wave you on.
    .week = The fresh edge is weak until grass holds it, and it can break under a foot. Some soil may fall onto the sand.
    .then = Once the edge has firmed, you should see at a glance where the grass ends.
    .why = Grass grows out over the sand and hides the edge. A clean edge shows where the bunker begins.
    .without = Left alone, the bunker gets smaller and its edge becomes hard to see.
    .do = { where-the-bank-is-low } Keep off the fresh edge.
    .q1 = Does the bunker get bigger each time?
    .a1 = A little. Now and then an edge has to be built out again.
    .q2 = Why do it so often?
    .a2 = In the growing months the grass is quick to creep back over the sand.
    .q3 = Why does the edge crumble?
    .a3 = The cut leaves bare soil until roots hold it. Feet and dry weather loosen it.

# cautions: keep-clear trench footing lifting
kind-bunker-drainage = bunker drainage
    .what = We lay pipes under a bunker, so that rain has a way out.
    .see = At first you will see sand pushed aside and a trench in the floor. Stones and a pipe go in, and the sand goes back.
    .still = The sand may still sink a little along the line of the pipe.
    .day = The bunker is dug up for part of the work and may be roped off. Please keep away from the open trench.
    .week = The sand is soft where we put it back. Outside the bunker, a line shows until grass has grown over it.
    .then = Once the pipes are in, water should get away faster after rain.
    .why = Where water cannot get away, the sand turns hard and dirty. Then we spend wet days with pumps and shovels.
    .without = Left alone, the bunker fills with water each time it rains hard.
    .do = Walk around any open trench and do not step across. Leave tools and pipes where they lie.
    .q1 = Why did the old drains stop working?
    .a1 = Fine soil and roots get into the pipes over the years and block them.
    .q2 = Will the bunker still flood?
    .a2 = In very heavy rain it may. The water should then get away faster than before.
    .q3 = Where does the water go?
    .a3 = It runs through the pipe to lower ground, to a ditch or to a pit filled with stones.
    .q4 = { asked-about-roped-ground }
    .a4 = { asked-about-roped-ground.answer }

# cautions: keep-clear trench footing ropes
kind-drainage-trenching = drainage trenching
    .what = We dig a trench, lay a pipe in it and fill it in again.
    .see = At first you will see an open trench, piles of soil or stones, and wheel tracks. Later a bare strip is left.
    .still = You may still see a bare strip where the trench was. It may sink a little until we top it up.
    .day =
        { $surface ->
            [green] Part of the green is dug up and roped off. The hole is cut elsewhere, or you play to a temporary green.
            [tee] Part of the tee is dug up and roped off. The tee markers stand somewhere else.
           *[other] We rope off the ground where we dig. Walk around it, and wait until we wave you on.
        }
    .week = The filled strip may sink a little, and then we top it up. It shows until grass has grown over it.
    .then = Once grass has covered the strip, the ground should look as before and dry faster after rain.
    .why = Water that cannot get away makes the ground soft. A pipe gives it a way out.
    .without = Left alone, the ground stays wet for longer, and we have to close it more often.
    .do =
        { $surface ->
            [green] Keep well away from any open trench. Stay off the filled strip while it is soft.
            [tee] Keep well away from any open trench. Stay off the filled strip while it is soft.
           *[other] Keep well away from any open trench. Keep { -trolleys } and { -buggies } off the filled strip while it is soft.
        }
    .q1 = Why does the line show for so long?
    .a1 = The soil in the trench settles, and grass has to grow in from both sides.
    .q2 = Why not lift the { -turf } and lay it back?
    .a2 = We do where it will live. Where it will not, we fill with sand or soil and let grass grow in.
    .q3 = Will this cure the wet ground?
    .a3 = It should help the ground that lies near the pipe. It cannot stop every puddle in very heavy rain.
    .q4 = { asked-how-long }
    .a4 = { asked-how-long.answer }
    .q5 = { asked-about-roped-ground }
    .a5 = { asked-about-roped-ground.answer }

# cautions: keep-clear water-spray trench footing
kind-irrigation-work = irrigation work
    .what = We repair or replace the pipes and sprinklers that water the course.
    .see = At first you will see small pits or a trench, and wet patches. Sprinklers may run by day while we test them.
    .still = You may still see bare strips or spots where we dug.
    .day =
        { $surface ->
            [green] A sprinkler may come on by the green while we test it. Wait until it stops or until we wave you on.
            [tee] A sprinkler may come on by the tee while we test it. Wait until it stops or until we wave you on.
           *[other] A sprinkler may come on while we test it. Wait until it stops or until we wave you on.
        }
    .week = The filled ground is soft and may sink a little. We top it up, and grass grows over it.
    .then = Once the work is done, the grass should get its water more evenly.
    .why = Old pipes leak and worn sprinklers miss spots. So some ground gets too much water and some too little.
    .without = Left alone, pipes leak more and more, and the grass turns brown in a dry spell.
    .do = Walk around open pits and wet patches. Leave lids and valves to us.
    .q1 = Why are the sprinklers on in the middle of the day?
    .a1 = We have to see each one run to know that it works. Then we turn it off again.
    .q2 = Why water when rain is on its way?
    .a2 = This is a test and not a watering. Rain cannot show us a leak or a blocked sprinkler.
    .q3 = Why did the ground sink?
    .a3 = Soil that has been dug up takes time to settle. Tell us if you find a dip, and we will fill it.

# cautions: tree keep-clear footing
kind-tree-work = tree work
    .what = We have branches cut back, or whole trees taken down.
    .see = While we work, you will see a marked area around the tree, and piles of branches. Later there is more light.
    .still = You may still see piles of branches and the marks of wheels.
    .day = Nobody may enter the marked area. You may have to wait on holes nearby while branches come down.
    .week = Wood and branches may lie in piles until we clear them. Wheels may have marked the ground.
    .then = Once the work is done, the grass beneath should get more light and air and dry faster.
    .why = Dead or weak branches can fall on people. Trees also take light, air and water from the grass.
    .without = Left alone, weak branches come down in storms, and grass in the shade stays thin and wet.
    .do = Stay outside the marked area, even when nobody is at work. Leave branches and logs where they lie.
    .q1 = Why cut down a tree that looks healthy?
    .a1 = It may be sound and still keep the light from a green. It may also crowd a better tree.
    .q2 = What about birds and their nests?
    .a2 = In many places the law protects nests and some trees. The law and local rules come first.
    .q3 = May I fetch my ball from the marked area?
    .a3 = No, please stay out. Branches can fall with no warning, even after the saws have stopped.

# cautions: keep-clear footing ropes
kind-path-work = { -path } work
    .what = We repair or rebuild a { -path }.
    .see = You will see bare ground, stones or a fresh surface. While the { -path } is closed, signs or ropes stand at both ends.
    .still = The grass beside the { -path } may still look worn.
    .day = The { -path } is closed where we work. Follow the signs to the way around it.
    .week = A fresh surface needs time to set hard. The grass beside it looks worn until it grows in.
    .then = Once the surface has set, the way should be firm and even underfoot.
    .why = On a worn { -path } water stands and feet slip. People then walk on the grass beside it.
    .without = Left alone, the { -path } gets worse, and the grass on both sides is worn to mud.
    .do = Keep to the way that is marked. Keep { -trolleys } and { -buggies } off the fresh surface until the signs are gone.
    .q1 = Why can I not drive beside it?
    .a1 = Wheels press soft ground hard, and then grass cannot grow there.
    .q2 = I find it hard to walk far. What can I do?
    .a2 = Ask the club before you start your round. They can tell you which way is the shortest.
    .q3 = Why is it closed when it looks finished?
    .a3 = It looks hard before it is hard. Wheels on it too early would leave ruts.

# cautions: footing frost ropes
# Marks of feet on frosted grass show later and last: Dowling, USGA, 22 January 2014; White, USGA.
kind-temporary-greens = temporary greens
    .what = We cut a hole in short grass near the green, so that the green itself can rest.
    .see = You will see a flag on a small mown patch. The usual green has no flag.
    .still = { kind-temporary-greens.see }
    .day = The hole ends at the temporary green. Putts there are slower and less true than you are used to.
    .week = The usual green rests with no feet, wheels or balls on it. We go back to it when it is fit for play.
    .then = Once the flag is back on the usual green, the small patch grows into the grass around it.
    .why = A frozen, soaked or newly worked green is easily hurt. Rest keeps the harm small.
    .without = Without temporary greens, footprints and { -pitch-marks } stay in the green until the grass grows again.
    .do = Please keep off the usual green, with { -trolleys } and { -buggies } too. Repair your { -pitch-marks } on the temporary green.
    .q1 = The usual green looks fine. Why may we not play on it?
    .a1 = Harm does not always show at once. After frost the marks come up later, and they last.
    .q2 = Why is the temporary green so bumpy?
    .a2 = It is cut from ordinary short grass. A true surface takes years to make.
    .q3 = Do scores count on temporary greens?
    .a3 = That is for the Committee to say, and not for us. Please ask the Committee if the notice of the work does not tell you.
    .q4 = When do we go back to the usual green?
    .a4 = When feet no longer harm it. Frost, water and any work there decide that.

# cautions: footing frost ropes lifting
# Marks of feet on frosted grass show later and last; carts do more than feet: Dowling, USGA, 22 January 2014; White,
# USGA.
kind-winter-protection = winter protection
    .what = We put out ropes, signs or covers that guard the grass in the cold and wet months.
    .see =
        { $surface ->
            [green] You will see ropes and signs around the greens. Some greens may have a cover on them.
           *[other] You will see ropes and signs, and in places a cover or a mat.
        }
    .still = { kind-winter-protection.see }
    .day =
        { $surface ->
            [green] The ropes may send you the long way around. A green under a cover is at rest.
            [tee] You may tee off from a mat or from another part of the tee.
           *[other] The ropes may send you the long way around.
        }
    .week = We move the ropes from time to time, so that no one strip takes all the feet.
    .then = Once the grass grows again, ropes and covers can come off.
    .why = Grass hardly grows in the cold, so it cannot heal. Frozen or soaked ground is easily marked.
    .without = Without ropes and covers, the walks between holes turn to mud and stay bare until the grass grows.
    .do = Go the way that the ropes show, and stay off frosted grass. Leave ropes, signs and covers as they are.
    .q1 = The ground is frozen hard. Why keep off it?
    .a1 = The ground is hard, but the leaf is brittle and breaks underfoot. The marks show later, and they last.
    .q2 = Why not let { -trolleys } through?
    .a2 = Wheels press wet soil hard and leave ruts. A carried bag does less harm. If you cannot carry yours, ask the club before you start.
    .q3 = It is only a few steps. May I cross the rope?
    .a3 = Please do not. The few steps of many people make a track of mud.
