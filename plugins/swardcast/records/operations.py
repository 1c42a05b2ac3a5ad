"""Operations: one kind of work each, with its quantities."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from enum import Enum
from typing import Final

from swardcast.quantities import Sand

__all__ = [
    "LASTING",
    "LEAVES_NOTHING",
    "NOT_COMPUTED",
    "TRENCHES",
    "Dressing",
    "Grooving",
    "HeightOfCut",
    "Kind",
    "Operation",
    "OtherWork",
    "ProductUse",
    "SandInjection",
    "Seeding",
    "Stripping",
    "Tining",
    "Trenching",
    "label_counts",
]


class Kind(Enum):
    """Kinds of operation, in the trade's words."""

    HOLLOW_TINING = "hollow tining"
    SOLID_TINING = "solid tining"
    NEEDLE_TINING = "needle tining"
    DEEP_TINING = "deep tining"
    SAND_INJECTION = "sand injection"
    SCARIFYING = "scarifying"
    VERTICUTTING = "verticutting"
    FRAISE_MOWING = "fraise mowing"
    TOPDRESSING = "topdressing"
    BRUSHING_IN = "brushing in"
    OVERSEEDING = "overseeding"
    GRANULAR_FEED = "granular feed"
    LIQUID_FEED = "liquid feed"
    WETTING_AGENT = "wetting agent"
    PLANT_PROTECTION = "plant protection"
    ROLLING = "rolling"
    CUTTING_HEIGHT = "change of cutting height"
    RETURFING = "re-turfing"
    SEEDING_BARE_GROUND = "seeding bare ground"
    BUNKER_SANDING = "bunker re-sanding"
    BUNKER_LINER = "bunker liner"
    BUNKER_EDGING = "bunker edging"
    BUNKER_DRAINAGE = "bunker drainage"
    DRAINAGE_TRENCHING = "drainage trenching"
    IRRIGATION_WORK = "irrigation work"
    TREE_WORK = "tree work"
    PATH_WORK = "path work"
    TEMPORARY_GREENS = "temporary greens"
    WINTER_PROTECTION = "winter protection"


TRENCHES: Final = frozenset({Kind.DRAINAGE_TRENCHING, Kind.BUNKER_DRAINAGE, Kind.IRRIGATION_WORK})
"""Kinds that open a trench."""

NOT_COMPUTED: Final = TRENCHES | {
    Kind.SAND_INJECTION,
    Kind.RETURFING,
    Kind.SEEDING_BARE_GROUND,
    Kind.BUNKER_SANDING,
    Kind.BUNKER_LINER,
    Kind.BUNKER_EDGING,
    Kind.PATH_WORK,
}
"""Kinds that take a while to come back, for which nothing is computed: the plan names somebody's usual time."""

LEAVES_NOTHING: Final = frozenset({Kind.BRUSHING_IN, Kind.ROLLING, Kind.CUTTING_HEIGHT, Kind.TREE_WORK})
"""Kinds after which a surface is as it was before: nothing heals, no label asks for patience, nothing stays on it."""

LASTING: Final = frozenset({Kind.TEMPORARY_GREENS, Kind.WINTER_PROTECTION})
"""Kinds that are no piece of work but a state: it begins with the first entry, and ends when the surface is opened."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Tining:
    """Holes made by tines.

    Args:
        kind: hollow, solid, needle or deep tining.
        diameter_mm: outside (or solid) diameter.
        inside_diameter_mm: inside diameter of a hollow tine, where the maker gives it.
        across_mm: spacing between tines.
        along_mm: spacing in the direction of travel.
        depth_mm: depth of the holes.
        passes: how many times the machine goes over.
    """

    kind: Kind
    diameter_mm: float
    inside_diameter_mm: float | None
    across_mm: float
    along_mm: float
    depth_mm: float
    passes: int


@dataclass(frozen=True, slots=True, kw_only=True)
class SandInjection:
    """Sand shot into the turf; nothing is computed of it, so all sizes may be left out.

    Args:
        kind: sand injection.
        diameter_mm: diameter of the holes, or None.
        across_mm: spacing between holes, or None.
        along_mm: spacing in the direction of travel, or None.
        depth_mm: depth of the holes, or None.
        sand: sand used, or None.
    """

    kind: Kind
    diameter_mm: float | None = None
    across_mm: float | None = None
    along_mm: float | None = None
    depth_mm: float | None = None
    sand: Sand | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Grooving:
    """Grooves made by blades: scarifying or verticutting.

    Args:
        kind: scarifying or verticutting.
        blade_mm: width of the blade, or of the groove where it was measured.
        spacing_mm: from one blade to the next.
        depth_mm: depth below the surface.
        passes: how many times the machine goes over.
    """

    kind: Kind
    blade_mm: float
    spacing_mm: float
    depth_mm: float
    passes: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Stripping:
    """Turf cut off with its crowns, so that it has to grow back from below.

    Args:
        kind: fraise mowing.
        depth_mm: depth of the cut.
        share: share of the surface that is stripped, above 0 and up to 1.
    """

    kind: Kind
    depth_mm: float
    share: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Dressing:
    """Sand spread on turf or put into a bunker."""

    kind: Kind
    sand: Sand


@dataclass(frozen=True, slots=True, kw_only=True)
class Seeding:
    """Seed sown into the turf or on bare ground.

    Args:
        kind: overseeding or seeding bare ground.
        seed: the kind of grass, in the club's words.
        rate_g_per_m2: seed rate, or None where the club does not say.
    """

    kind: Kind
    seed: str
    rate_g_per_m2: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class ProductUse:
    """A product with a label: feed, wetting agent or plant protection.

    What the label asks of people is what the manager typed from it. Nothing of it is ever computed or taken as usual.

    Args:
        kind: granular feed, liquid feed, wetting agent or plant protection.
        product: what sort of product, in plain words.
        re_entry: what the label says about when people may be back.
        signs: which signs stand, and where.
        label_read_by: who read the label.
        label_read_on: the day on which it was read.
        rate: how much is used, as typed, or "".
        water_in: how it is watered in, as typed, or "".
    """

    kind: Kind
    product: str
    re_entry: str
    signs: str
    label_read_by: str
    label_read_on: date
    rate: str = ""
    water_in: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class HeightOfCut:
    """The mower set to another height.

    Args:
        kind: change of cutting height.
        from_mm: height before, or None.
        to_mm: height from now on.
    """

    kind: Kind
    from_mm: float | None
    to_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Trenching:
    """A trench opened for a pipe or a cable and filled again.

    Args:
        kind: drainage trenching, bunker drainage or irrigation work.
        length_m: length of all its runs, or None.
        width_mm: width, or None.
        depth_mm: depth, or None.
    """

    kind: Kind
    length_m: float | None = None
    width_mm: float | None = None
    depth_mm: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class OtherWork:
    """Work without quantities: brushing in, rolling, re-turfing, tree work, temporary greens and the like."""

    kind: Kind


Operation = (
    Tining
    | SandInjection
    | Grooving
    | Stripping
    | Dressing
    | Seeding
    | ProductUse
    | HeightOfCut
    | Trenching
    | OtherWork
)


def label_counts(operations: Iterable[Operation]) -> bool:
    """Tell whether a product's label says when people may be back, so that no hour of it may be computed.

    Args:
        operations: operations of a job.

    Returns:
        Whether there is a product among them.
    """
    return any(isinstance(operation, ProductUse) for operation in operations)
