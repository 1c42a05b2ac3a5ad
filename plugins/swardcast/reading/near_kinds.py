"""Words that come near a kind of work, and the kind that is meant."""

from __future__ import annotations

from typing import Final

from swardcast.errors import nearest
from swardcast.records.operations import Kind

__all__ = ["kind_meant"]

_FEED: Final = (Kind.GRANULAR_FEED, Kind.LIQUID_FEED)
_SEED: Final = (Kind.OVERSEEDING, Kind.SEEDING_BARE_GROUND)
_ALSO_SAID: Final[dict[tuple[Kind, ...], tuple[str, ...]]] = {
    (Kind.HOLLOW_TINING,): ("coring", "hollow coring", "core aeration", "aeration", "aerification"),
    (Kind.SOLID_TINING,): ("spiking", "solid spiking", "solid-tine aeration"),
    (Kind.NEEDLE_TINING,): ("pencil tining", "micro tining", "star tining"),
    (Kind.DEEP_TINING,): ("deep spiking", "deep aeration", "deep-tine aeration"),
    (Kind.SAND_INJECTION,): ("sand filling", "injection", "sand injecting"),
    (Kind.SCARIFYING,): ("dethatching", "raking", "scarification"),
    (Kind.VERTICUTTING,): ("vertical cutting", "vertical mowing", "grooming"),
    (Kind.TOPDRESSING,): ("sanding", "sand", "dressing"),
    (Kind.BRUSHING_IN,): ("brushing", "dragging", "matting"),
    _SEED: ("seeding", "seed", "sowing", "reseeding", "re-seeding"),
    _FEED: ("feeding", "feed", "fertiliser", "fertilizer", "fertilising", "fertilizing"),
    (Kind.GRANULAR_FEED,): ("granular fertiliser", "granular fertilizer", "dry feed"),
    (Kind.LIQUID_FEED,): ("foliar feed", "liquid fertiliser", "liquid fertilizer", "seaweed"),
    (Kind.WETTING_AGENT,): ("wetter", "soil wetter", "surfactant", "soil surfactant"),
    (Kind.PLANT_PROTECTION,): (
        "spraying", "spray", "fungicide", "herbicide", "insecticide", "pesticide", "weedkiller", "weed control",
        "disease control", "pest control", "moss control", "growth regulator",
    ),
    (Kind.CUTTING_HEIGHT,): ("mowing", "height of cut", "cutting height", "mowing height"),
    (Kind.RETURFING,): ("turfing", "returfing", "resodding", "sodding", "laying turf"),
    (Kind.BUNKER_SANDING,): ("bunker sand", "resanding", "re-sanding", "new sand"),
    (Kind.BUNKER_LINER,): ("bunker lining", "liner", "lining"),
    (Kind.BUNKER_EDGING,): ("edging", "bunker edges"),
    (Kind.DRAINAGE_TRENCHING,): ("drainage", "trenching", "draining", "drains", "pipe drainage", "land drains"),
    (Kind.IRRIGATION_WORK,): ("irrigation", "sprinklers", "pipe work", "watering system"),
    (Kind.TREE_WORK,): ("trees", "pruning", "felling", "crown lifting", "tree felling"),
    (Kind.PATH_WORK,): ("paths", "path", "path repairs", "cart path", "cart paths"),
    (Kind.TEMPORARY_GREENS,): ("temporary green", "winter greens", "temps"),
    (Kind.WINTER_PROTECTION,): ("winter covers", "frost covers", "covers", "roping off", "winter work"),
}  # fmt: skip
"""What greenkeepers also say; common practice, no published source."""


def kind_meant(word: str) -> str:
    """Name the kind of work that somebody meant who wrote another word for it.

    Args:
        word: the word as written.

    Returns:
        A sentence that asks or tells, or "" when nothing is near.
    """
    said = " ".join(word.lower().split())
    for kinds, words in _ALSO_SAID.items():
        if said in words:
            names = " or ".join(repr(kind.value) for kind in kinds)
            return f"Write {names}." if len(kinds) > 1 else f"Did you mean {names}?"
    return nearest(word, [kind.value for kind in Kind])
