### The usual cautions of a notice. They never replace the product label, the law, local rules or licensed practice.
### Sources are named above each; where none stands, common practice, no published source.

# Priority of greenkeepers, and ear defenders: BIGGA by way of a trade page, 1 July 2020; a course guide's "Priority
# on the golf course" (Allbutt and Davis). Machines: HSE, HSG79 (1994).
caution-keep-clear = Keep well back from machines until they have stopped and the driver waves you on. We wear { -ear-defenders } and may not hear a shout.

# A golf club's page on health and safety: holes, sand, ropes and wet banks.
caution-footing = Mind your footing near aeration holes, pits, loose sand, ropes and wet banks. Walk around them, in shoes that grip.

# Shovelling and mixing of dry material is listed as dusty work: HSE, INDG463 (March 2013). No health advice is given.
caution-dust = Dry sand makes dust. Stay out of it while we spread, brush or shovel, and keep the wind behind you.

# The label binds: Code of Practice for Using Plant Protection Products (United Kingdom), as told by Defra, 2006.
caution-label = Follow the signs, the product label and local rules: they come before anything that stands here. Where the law asks for a licensed person, that person decides.

caution-new-turf = Please stay off new { -turf }. A heel can lift { -turf } that has not rooted.

caution-trench = Keep away from open trenches and pits, because the edge can give way. Never step or jump across.

caution-tree = Stay out of the marked area, even when nobody is at work there. Branches can fall with no warning.

# Avoid lifting by hand where possible: Manual Handling Operations Regulations 1992; HSE, INDG143 (2020).
caution-lifting = Bags, boards, covers and pipes can be heavy or can slip. Leave them to the staff.

# Marks that may last a month or more: Dowling, USGA, 22 January 2014; White, USGA. Slippery ground: common practice.
caution-frost = Stay off frosted grass, because marks of feet and wheels may last for a month or more. Frozen ground is slippery too.

caution-ropes = Ropes and stakes are hard to see in poor light. Walk around them and do not step over.

caution-water-spray = A sprinkler can start with no warning, and its spray is strong. Keep back until it stops.
