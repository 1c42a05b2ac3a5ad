"""What each kind of operation is, what a player notices, why it is done, and the usual cautions.

To add a kind: its name in records/operations.py, its fields in reading/operations.py, its sums in
records/translate.py where it opens the turf, its phrases here, and a scenario in the tests.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final

from swardcast.records.operations import Kind

__all__ = ["KIND_PHRASES", "KindPhrases", "cautions_for"]

_KEEP_CLEAR: Final = (
    "Keep well back from machines until they have stopped and the driver waves you on. "
    "Greenkeepers wear ear defenders and may not hear a shout."
)
_FOOTING: Final = "Mind your footing near holes, loose sand, ropes and wet banks."
_TRENCH: Final = "Keep away from open trenches: the edge can give way."
_DUST: Final = "Dry sand makes dust. Stay out of it while we spread or brush."
_LABEL: Final = "What the product label says counts, and so do local rules and the licensed person who does the work."


@dataclass(frozen=True, slots=True, kw_only=True)
class KindPhrases:
    """The words for one kind of operation.

    Args:
        what: one sentence without jargon.
        notice: what a player sees and feels.
        why: why it is done, and what happens if it is not.
        cautions: usual cautions, one sentence or two each.
    """

    what: str
    notice: str
    why: str
    cautions: tuple[str, ...] = (_KEEP_CLEAR,)


KIND_PHRASES: Final[dict[Kind, KindPhrases]] = {
    Kind.HOLLOW_TINING: KindPhrases(
        what="Hollow tining takes small plugs out of the turf, so that sand and air can get in.",
        notice="You will see rows of small holes. Putts may bump or turn until the holes close.",
        why="It takes out the spongy layer that holds water under the surface. Left alone, greens turn soft and slow.",
        cautions=(_KEEP_CLEAR, _FOOTING),
    ),
    Kind.SOLID_TINING: KindPhrases(
        what="Solid tining pushes spikes into the turf and takes nothing out.",
        notice="You will see small holes. They close sooner than those of hollow tines.",
        why="It lets air and water down to the roots. Without it the ground sets hard and the roots stay short.",
        cautions=(_KEEP_CLEAR, _FOOTING),
    ),
    Kind.NEEDLE_TINING: KindPhrases(
        what="Needle tining makes very fine holes in the turf.",
        notice="You will see pinholes. Most putts roll true straight away.",
        why="It lets air in during the playing season at little cost to play.",
    ),
    Kind.DEEP_TINING: KindPhrases(
        what="Deep tining drives long spikes far into the ground.",
        notice="You will see holes and now and then a lifted edge. The ground may feel softer for a while.",
        why="It breaks hard layers so that water can drain. Without it the course stays wet for longer after rain.",
        cautions=(_KEEP_CLEAR, _FOOTING),
    ),
    Kind.SAND_INJECTION: KindPhrases(
        what="Sand injection shoots sand into the turf through small holes.",
        notice="You will see small holes filled with sand.",
        why="It lets air and water through, and the surface gets firmer.",
        cautions=(_KEEP_CLEAR, _DUST),
    ),
    Kind.SCARIFYING: KindPhrases(
        what="Scarifying cuts thin grooves into the turf and lifts out dead growth.",
        notice="You will see fine lines across the surface. They give sand a way in.",
        why="It thins the layer of dead stems below the leaf. Left alone, that layer holds water and invites disease.",
    ),
    Kind.VERTICUTTING: KindPhrases(
        what="Verticutting trims the leaf with thin upright blades.",
        notice="You will see faint lines for a few days.",
        why="It keeps the grass upright and fine, so that the ball rolls true.",
    ),
    Kind.FRAISE_MOWING: KindPhrases(
        what="Fraise mowing shaves the turf off down to the soil, so that clean grass grows back from below.",
        notice="You will see bare ground, then a thin green cover that thickens over weeks.",
        why="It takes out moss, weed grasses and the spongy layer in one go. Left alone, they would take over.",
        cautions=(_KEEP_CLEAR, _FOOTING),
    ),
    Kind.TOPDRESSING: KindPhrases(
        what="Topdressing spreads dry sand over the turf.",
        notice="Greens look sandy and putts are slower at first. Sand works in with rain, brushing and growth.",
        why="Sand fills the holes and keeps the surface firm, level and dry. Unfilled holes leave dimples for weeks.",
        cautions=(_KEEP_CLEAR, _DUST),
    ),
    Kind.BRUSHING_IN: KindPhrases(
        what="Brushing in works the sand down into the holes.",
        notice="The surface is brushed the same way more than once.",
        why="Sand that stays on the leaf bruises it and blunts the mower.",
        cautions=(_KEEP_CLEAR, _DUST),
    ),
    Kind.OVERSEEDING: KindPhrases(
        what="Overseeding sows new grass into the turf.",
        notice="You may see fine new shoots after a week or two. Please repair pitch marks with care.",
        why="New seed brings in the grasses that we want. Without it weaker grasses fill the gaps.",
    ),
    Kind.GRANULAR_FEED: KindPhrases(
        what="Feeding gives the grass the food that it needs to grow.",
        notice="You may see fine grains or a tint on the leaf until it is watered in.",
        why="Grass that is worked hard needs food to heal.",
        cautions=(_LABEL,),
    ),
    Kind.LIQUID_FEED: KindPhrases(
        what="Liquid feed gives the grass its food through the leaf.",
        notice="You may see a tint on the leaf for a while.",
        why="Grass that is worked hard needs food to heal.",
        cautions=(_LABEL,),
    ),
    Kind.WETTING_AGENT: KindPhrases(
        what="A wetting agent helps water to soak into the soil.",
        notice="There is little to see once it is watered in.",
        why="Dry soil sheds water, and the grass dies in patches.",
        cautions=(_LABEL,),
    ),
    Kind.PLANT_PROTECTION: KindPhrases(
        what="Plant protection treats the grass against disease, weeds or pests.",
        notice="Signs tell where we treat and when people may be back.",
        why="Left alone, the damage would spread.",
        cautions=(_LABEL,),
    ),
    Kind.ROLLING: KindPhrases(
        what="Rolling presses the surface smooth.",
        notice="Greens are firmer and a little quicker for a day or two.",
        why="It settles the sand and levels the edges of the holes.",
    ),
    Kind.CUTTING_HEIGHT: KindPhrases(
        what="We set the mowers to another cutting height.",
        notice="The ball rolls a little faster or slower than before.",
        why="Longer grass stands cold and drought better. Shorter grass plays faster.",
        cautions=(),
    ),
    Kind.SEEDING_BARE_GROUND: KindPhrases(
        what="We sow grass on bare ground.",
        notice="The area is roped off until the new grass can bear feet.",
        why="Bare ground turns to mud, and weeds come up first.",
        cautions=(_FOOTING,),
    ),
    Kind.RETURFING: KindPhrases(
        what="Re-turfing lifts worn turf and lays new turf in its place.",
        notice="The area is roped off. You will see joints between the turves until they knit together.",
        why="Worn turf no longer gives a level stance, and seed alone would take longer.",
        cautions=(_KEEP_CLEAR, "Please stay off new turf: a heel can lift a turf that has not rooted.", _FOOTING),
    ),
    Kind.BUNKER_SANDING: KindPhrases(
        what="Re-sanding takes old sand out of a bunker and puts new sand in.",
        notice="New sand plays soft at first, and a ball may bury. It firms with rain, raking and time.",
        why="Old sand fills with soil and stones, and then it no longer drains.",
        cautions=(_KEEP_CLEAR, _FOOTING),
    ),
    Kind.BUNKER_LINER: KindPhrases(
        what="A liner goes into the bunker, between the soil and the sand.",
        notice="The bunker is out of play while it is open, and its new sand is soft at first.",
        why="It keeps stones and soil out of the sand.",
        cautions=(_KEEP_CLEAR, _FOOTING),
    ),
    Kind.BUNKER_EDGING: KindPhrases(
        what="We cut the edge of the bunker back to its shape.",
        notice="The edge is sharp and clear.",
        why="An edge that has grown over hides where the bunker begins.",
        cautions=(_KEEP_CLEAR, _FOOTING),
    ),
    Kind.BUNKER_DRAINAGE: KindPhrases(
        what="We open the bunker and lay a pipe that takes its water away.",
        notice="The bunker is out of play while it is open, and its sand is soft at first.",
        why="Water that stands in a bunker washes its sand away.",
        cautions=(_KEEP_CLEAR, _TRENCH, _FOOTING),
    ),
    Kind.IRRIGATION_WORK: KindPhrases(
        what="We work on the pipes and sprinklers that water the course.",
        notice="You will see open ground along the pipe, then a line in the turf.",
        why="A leak or a blocked sprinkler leaves some turf wet and some dry.",
        cautions=(_KEEP_CLEAR, _TRENCH, _FOOTING),
    ),
    Kind.TREE_WORK: KindPhrases(
        what="We cut back or fell trees.",
        notice="You will hear saws, and the area round the trees is roped off.",
        why="Grass needs light and moving air. Dead branches can fall on people.",
        cautions=(_KEEP_CLEAR, "Stay outside the ropes: branches and trunks fall without warning."),
    ),
    Kind.PATH_WORK: KindPhrases(
        what="We mend or rebuild a path.",
        notice="The path is closed for a while. Signs show the way round.",
        why="A worn path is slippery, and people walk beside it.",
        cautions=(_KEEP_CLEAR, _FOOTING),
    ),
    Kind.TEMPORARY_GREENS: KindPhrases(
        what="Some holes play to a temporary green in front of the usual one.",
        notice="The hole is shorter, and the temporary green is rougher than the usual one.",
        why="Feet on frozen or soaked grass tear it, and it cannot grow back in the cold.",
        cautions=(),
    ),
    Kind.WINTER_PROTECTION: KindPhrases(
        what="Ropes, mats or covers keep feet and frost off the turf that suffers most.",
        notice="Some ways round the course change.",
        why="Grass hardly grows in winter. Worn ground stays bare until spring.",
        cautions=(_FOOTING,),
    ),
    Kind.DRAINAGE_TRENCHING: KindPhrases(
        what="Drainage work opens a trench, lays a pipe and fills the trench again.",
        notice="You will see a line in the turf until the grass has grown over it.",
        why="Water that cannot get away closes the course after rain.",
        cautions=(_KEEP_CLEAR, _TRENCH, _FOOTING),
    ),
}


def cautions_for(kinds: Iterable[Kind]) -> list[str]:
    """List the usual cautions of several kinds of work, each once.

    Args:
        kinds: kinds of operation.

    Returns:
        Cautions, in order of first need.
    """
    return list(dict.fromkeys(caution for kind in kinds for caution in KIND_PHRASES[kind].cautions))
