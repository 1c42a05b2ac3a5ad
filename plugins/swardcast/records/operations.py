"""Operations: one kind of work each, with its quantities."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from swardcast.quantities import Sand

__all__ = ["Dressing", "Feeding", "Grooving", "Kind", "Operation", "OtherWork", "Seeding", "Stripping", "Tining"]


class Kind(Enum):
    """Kinds of operation, in the trade's words."""

    HOLLOW_TINING = "hollow tining"
    SOLID_TINING = "solid tining"
    NEEDLE_TINING = "needle tining"
    DEEP_TINING = "deep tining"
    SCARIFYING = "scarifying"
    VERTICUTTING = "verticutting"
    FRAISE_MOWING = "fraise mowing"
    TOPDRESSING = "topdressing"
    BRUSHING_IN = "brushing in"
    OVERSEEDING = "overseeding"
    FEEDING = "feeding"
    ROLLING = "rolling"
    RETURFING = "re-turfing"
    BUNKER_SANDING = "bunker re-sanding"
    DRAINAGE = "drainage"


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
    """Seed sown into the turf.

    Args:
        kind: overseeding.
        seed: the kind of grass, in the club's words.
        rate_g_per_m2: seed rate, or None where the club does not say.
    """

    kind: Kind
    seed: str
    rate_g_per_m2: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Feeding:
    """Feed given; what the product label asks of the public is what the manager typed, never computed.

    Args:
        kind: feeding.
        product: what kind of feed, in plain words.
        label: what the product label says that people must do, as typed.
        label_read_by: who read the label.
    """

    kind: Kind
    product: str
    label: str
    label_read_by: str


@dataclass(frozen=True, slots=True, kw_only=True)
class OtherWork:
    """Work without quantities that the sums need: brushing in, rolling, re-turfing, drainage."""

    kind: Kind


Operation = Tining | Grooving | Stripping | Dressing | Seeding | Feeding | OtherWork
