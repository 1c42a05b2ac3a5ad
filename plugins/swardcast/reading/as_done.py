"""How work was really done, as a log entry tells it, held against the plan."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from swardcast.records.operations import NOT_COMPUTED, Operation, ProductUse
from swardcast.records.plan import Job

__all__ = ["oddities_as_done"]


def oddities_as_done(job: Job, really: Sequence[Operation]) -> Iterator[tuple[str, str, str]]:
    """List what an entry must not bring into a job, since only the plan says what follows from it.

    The plan says how long players stay off after a product, and how long work takes to come back for which nothing is
    computed. A product with another label, or such work, would be published with a date that is not its own.

    Args:
        job: the job as planned.
        really: operations as the entry tells them.

    Yields:
        What was found, what was expected and a hint.
    """
    labels = {_label(operation) for operation in job.operations if isinstance(operation, ProductUse)}
    for operation in really:
        kind = operation.kind.value
        if isinstance(operation, ProductUse) and _label(operation) not in labels:
            yield (
                f"{kind} whose product or label is not that of the plan",
                f"the product and the words of its label as {job.file}, line {job.line}, has them",
                (
                    "Write the other product into the plan first, with how long players stay off after it."
                    " Its notice tells what the plan says."
                ),
            )
        elif operation.kind in NOT_COMPUTED and job.normal_after is None:
            yield (
                f"{kind}, for which no date can be computed",
                (
                    f"its usual time in {job.file}, line {job.line},"
                    " such as 'normal after: {from: 4 to 8 weeks, source: our own experience}'"
                ),
                "",
            )


def _label(use: ProductUse) -> ProductUse:
    """The product and its label, whatever was used of it."""
    return replace(use, rate="", water_in="")
