"""The block "planning" of club.yaml: prices, aims for a year, how organic matter is sampled. It stays private."""

from __future__ import annotations

import re
from typing import Annotated, Final

from pydantic import BeforeValidator, Field, model_validator

from swardcast.quantities import MASS_KG, QuantityError, Sand, SandBasis, parse_length_mm, parse_sand
from swardcast.reading.blocked_block import BlockedBlock, days_without_work_from
from swardcast.reading.gaps_block import GapBlock, gaps_from
from swardcast.reading.importance_block import ImportanceBlock, importance_from
from swardcast.reading.near_kinds import kind_meant
from swardcast.reading.sand_store_block import SandStoreBlock, sand_store_from
from swardcast.reading.schema import Fraction, Model, Number, quantity, within, wrong, wrong_name
from swardcast.reading.surface_kinds import SurfaceKinds
from swardcast.reading.targets_block import Targets
from swardcast.reading.yaml_text import Located
from swardcast.records.club import SurfaceKind
from swardcast.records.operations import Kind
from swardcast.records.planning import USUAL_LAYER_MM, Planning, YearlyGoal

__all__ = ["PlanningBlock", "planning_from"]

_BLOCK: Final = "planning"
_PRICE: Final = re.compile(r"^\s*(?P<number>\d+(?:\.\d+)?)\s*(?:/|per|a|an)\s*(?P<unit>[a-z ]+?)\s*$", re.IGNORECASE)
_BY_MASS: Final = {**{unit: kg for unit, kg in MASS_KG.items() if kg > 1}, "us ton": MASS_KG["us ton"]}
_CURRENCY: Final = re.compile(r"^[A-Z]{3}$")
_MOST_MONEY: Final = 1_000_000.0  # for a tonne or a surface, in any currency: judgement
_MOST_SAND: Final = {SandBasis.DEPTH_MM: 50.0, SandBasis.KG_PER_M2: 80.0}
# Well above the most that was seen in a year, 35 mm (Woods 2021): judgement.
_DEEPEST_SAMPLE_MM: Final = 200.0  # deeper samples are not of the turf's own organic matter: judgement


def _currency(value: object) -> str:
    code = str(value).strip()
    if not _CURRENCY.fullmatch(code):
        raise wrong(value, "a currency by its three letters (ISO 4217), such as 'GBP', 'EUR' or 'USD'")
    from babel.numbers import list_currencies  # noqa: PLC0415 - loaded late: few clubs tell prices

    if code not in list_currencies():
        raise wrong(value, "a currency of ISO 4217, such as 'GBP', 'EUR' or 'USD'")
    return code


def _price_per_t(value: object) -> float:
    match = _PRICE.match(str(value))
    unit = " ".join(match["unit"].lower().split()) if match else ""
    if match is None or unit not in _BY_MASS:
        hint = "A 'ton' is 2,000 pounds to some and 1,000 kg to others: write 't' or 'US ton'." if unit == "ton" else ""
        raise wrong(value, "a price with what it is for, such as '45 per tonne' or '40 per US ton'", hint)
    price = float(match["number"]) * 1000 / _BY_MASS[unit]
    if price > _MOST_MONEY:
        raise wrong(value, "a price up to 1,000,000 per tonne", "Check the figure and its unit.")
    return price


def _kinds(value: object) -> object:
    if not isinstance(value, dict):
        raise wrong(value, "kinds of work with what each costs, such as 'hollow tining: 40'")
    known = [kind.value for kind in Kind]
    for name in value:
        if name not in known:
            raise wrong_name((name,), f"one of: {', '.join(known)}", kind_meant(str(name)))
    return value


def _sand_depth(value: object) -> Sand:
    try:
        sand = parse_sand(value)
    except QuantityError as error:
        raise wrong(error.found, "sand as a depth or a rate, such as '8 mm' or '6 kg/m2'", error.hint) from error
    if sand.basis not in _MOST_SAND:
        raise wrong(value, "sand as a depth or a rate, such as '8 mm' or '6 kg/m2'")
    if not 0 < sand.amount <= _MOST_SAND[sand.basis]:
        raise wrong(value, "sand of a year up to 50 mm or 80 kg/m2", "Check the figure and its unit.")
    return sand


_Money = Annotated[Number, within(0, _MOST_MONEY, "an amount from 0 to 1,000,000")]
_Costs = Annotated[dict[str, _Money], BeforeValidator(_kinds)]
_Share = Annotated[Fraction, within(0.001, 1, "a share of the surface from 0.1 % to 100 %")]


class _Goal(Model):
    for_: SurfaceKinds = Field(default=frozenset(), alias="for")
    surface_disturbed: _Share | None = None
    surface_removed: _Share | None = None
    sand: Annotated[Sand, BeforeValidator(_sand_depth)] | None = None


class PlanningBlock(Model):
    """What the club keeps to itself when it plans."""

    currency: Annotated[str, BeforeValidator(_currency)] = ""
    sand_price: Annotated[float, BeforeValidator(_price_per_t)] | None = None
    cost_per_green: _Costs = {}
    cost_per_tee: _Costs = {}
    cost_per_approach: _Costs = {}
    cost_per_fairway: _Costs = {}
    cost_per_rough: _Costs = {}
    cost_per_bunker: _Costs = {}
    cost_per_practice_ground: _Costs = {}
    sand_store: SandStoreBlock = SandStoreBlock()
    yearly_goal: _Goal = _Goal()
    organic_matter_depth: Annotated[
        float,
        quantity(parse_length_mm, "a depth, such as '20 mm'"),
        within(5, _DEEPEST_SAMPLE_MM, "a depth from 5 mm to 200 mm"),
    ] = Field(default=USUAL_LAYER_MM)
    importance: ImportanceBlock = ImportanceBlock()
    days_without_work: BlockedBlock = BlockedBlock()
    gaps: list[GapBlock] = []
    targets: Targets = Targets()

    @property
    def costs(self) -> dict[SurfaceKind, dict[Kind, float]]:
        """What was typed of the cost of work, by kind of surface."""
        told = {kind: getattr(self, f"cost_per_{kind.value.replace(' ', '_')}") for kind in SurfaceKind}
        return {kind: {Kind(name): cost for name, cost in costs.items()} for kind, costs in told.items() if costs}

    @model_validator(mode="after")
    def _money_has_a_name(self) -> PlanningBlock:
        if not self.currency and (self.sand_price is not None or self.costs):
            raise wrong("a price without a currency", "its three letters, such as 'currency: GBP'")
        return self


def planning_from(document: Located) -> Planning:
    """Read what the club keeps to itself.

    Assumes that the file as a whole has been checked.

    Args:
        document: the YAML of club.yaml.

    Returns:
        The block, without choices.
    """
    told = PlanningBlock.model_validate(document.value.get(_BLOCK) or {})
    return Planning(
        currency=told.currency,
        sand_price_per_t=told.sand_price,
        work_costs=told.costs,
        goal=YearlyGoal(
            fits=told.yearly_goal.for_,
            disturbed_fraction=told.yearly_goal.surface_disturbed,
            removed_fraction=told.yearly_goal.surface_removed,
            sand=told.yearly_goal.sand,
        ),
        organic_layer_mm=told.organic_matter_depth,
        is_layer_told="organic_matter_depth" in told.model_fields_set,
        sand_store=sand_store_from(told.sand_store),
        importance=importance_from(told.importance),
        days_without_work=days_without_work_from(told.days_without_work),
        gaps=gaps_from(told.gaps),
        targets=told.targets.told,
    )
