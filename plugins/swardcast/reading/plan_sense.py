"""Whether a job makes sense as a whole: days in their order, a usual time where nothing is computed, areas for sand."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from swardcast.errors import Problem
from swardcast.quantities import SandBasis
from swardcast.records.club import Surface
from swardcast.records.operations import NOT_COMPUTED, Dressing, Kind, ProductUse
from swardcast.records.plan import Job, Play

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
    return [*_days(job), *_usual_time(job), *_products(job), *_local_rules(job), *_areas(job, surfaces)]


def _problem(job: Job, field: str, found: str, expected: str, hint: str = "") -> Problem:
    return Problem(file=job.file, line=job.line, field=field, found=found, expected=expected, hint=hint)


def _days(job: Job) -> Iterator[Problem]:
    if job.announced > job.starts:
        found = f"{job.announced}, after the work starts on {job.starts}"
        yield _problem(job, "announced", found, "a day before the work")


def _usual_time(job: Job) -> Iterator[Problem]:
    kinds = {operation.kind for operation in job.operations} & NOT_COMPUTED
    if kinds and job.normal_after is None:
        said = " and ".join(sorted(kind.value for kind in kinds))
        expected = f"the usual time for {said}, such as {{from: 4 to 8 weeks, source: our own experience}}"
        yield _problem(job, "normal after", "nothing", expected, "No date can be computed for this kind of work.")


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


def _areas(job: Job, surfaces: Mapping[str, Surface]) -> Iterator[Problem]:
    by_mass = any(
        isinstance(operation, Dressing) and operation.kind is Kind.TOPDRESSING and operation.sand.basis in _IN_TONNES
        for operation in job.operations
    )
    for name in job.surfaces if by_mass else ():
        if surfaces[name].area_m2 is None:
            found = f"sand in tonnes for {surfaces[name].name}, whose area is not in surfaces.yaml"
            yield _problem(job, "operations", found, "its area, or sand as a depth such as '2 mm'")
