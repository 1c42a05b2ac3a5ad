"""Whether a job makes sense as a whole: days in their order, a usual time where nothing is computed, areas for sand."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import combinations

from swardcast.errors import Problem
from swardcast.quantities import SandBasis
from swardcast.records.club import Surface
from swardcast.records.operations import NOT_COMPUTED, Dressing, Kind, ProductUse
from swardcast.records.plan import Job, LocalRule, Play

__all__ = ["oddities_of"]

_IN_TONNES = {SandBasis.TONNES_EACH, SandBasis.TONNES_IN_ALL}
_OUT_OF_PLAY = {Play.CLOSED, Play.TEMPORARY_GREEN}


def oddities_of(job: Job, surfaces: Mapping[str, Surface]) -> list[Problem]:
    """List what does not make sense in a job whose fields are right one by one.

    Args:
        job: the job.
        surfaces: all surfaces by id.

    Returns:
        Problems; none when all is well.
    """
    return [*_days(job), *_usual_times(job), *_products(job), *_local_rules(job), *_areas(job, surfaces)]


def _problem(job: Job, field: str, found: str, expected: str, hint: str = "") -> Problem:
    return Problem(file=job.file, line=job.line, field=field, found=found, expected=expected, hint=hint)


def _days(job: Job) -> Iterator[Problem]:
    if job.announced > job.starts:
        found = f"{job.announced}, after the work starts on {job.starts}"
        yield _problem(job, "announced", found, "a day before the work")


def _usual_times(job: Job) -> Iterator[Problem]:
    kinds = {operation.kind for operation in job.operations} & NOT_COMPUTED
    if kinds and job.normal_after is None:
        said = " and ".join(sorted(kind.value for kind in kinds))
        expected = f"the usual time for {said}, such as {{from: 4 to 8 weeks, source: our own experience}}"
        yield _problem(job, "normal after", "nothing", expected, "No date can be computed for this kind of work.")
    closed, normal = job.reopens_after, job.normal_after
    if Kind.TEMPORARY_GREENS in {operation.kind for operation in job.operations} and closed is None and normal is None:
        expected = "how long the temporary greens are played, such as {from: 8 to 11 weeks, source: our own experience}"
        yield _problem(job, "reopens after", "nothing", expected, "The last day of the work is not their last day.")
    if closed and normal and (normal.from_days < closed.from_days or normal.to_days < closed.to_days):
        found = f"{normal.from_days:g} to {normal.to_days:g} days"
        expected = f"no less than 'reopens after' ({closed.from_days:g} to {closed.to_days:g} days)"
        yield _problem(job, "normal after", found, expected, "A place that is still closed is not back to normal.")


def _products(job: Job) -> Iterator[Problem]:
    """A label is read before its product is used; and no computed hour may say when people may be back."""
    products = [operation for operation in job.operations if isinstance(operation, ProductUse)]
    for product in products:
        if product.label_read_on > job.starts:
            found = f"{product.label_read_on} for {product.kind.value}, after the work starts on {job.starts}"
            yield _problem(job, "label read on", found, "a day not later than the first day of the work")
    kept_off = job.while_working in _OUT_OF_PLAY and job.follow_up is None and job.reopens_after is None
    if products and kept_off:
        expected = (
            f"how long players stay off after {products[0].kind.value}, never less than its label says,"
            " such as 'follow up: 4 to 6 hours'"
        )
        yield _problem(
            job, "follow up", "nothing", expected, "Or write 'reopens after', for days. It is never computed."
        )


def _local_rules(job: Job) -> Iterator[Problem]:
    for local in job.local_rules:
        if local.until is not None and local.until < job.starts:
            found = f"{local.rule} until {local.until}, before the work starts on {job.starts}"
            yield _problem(job, "local rules", found, "a last day not before the first day of the work")
    for one, other in combinations(job.local_rules, 2):
        if one.rule == other.rule and not (_is_over_before(one, other) or _is_over_before(other, one)):
            yield _problem(job, "local rules", f"{one.rule} twice for the same days", "each Local Rule once for a day")


def _is_over_before(one: LocalRule, other: LocalRule) -> bool:
    return one.until is not None and other.starts is not None and one.until < other.starts


def _areas(job: Job, surfaces: Mapping[str, Surface]) -> Iterator[Problem]:
    by_mass = any(
        isinstance(operation, Dressing) and operation.kind is Kind.TOPDRESSING and operation.sand.basis in _IN_TONNES
        for operation in job.operations
    )
    for name in job.surfaces if by_mass else ():
        if surfaces[name].area_m2 is None:
            found = f"sand in tonnes for {surfaces[name].name}, whose area is not in surfaces.yaml"
            yield _problem(job, "operations", found, "its area, or sand as a depth such as '2 mm'")
