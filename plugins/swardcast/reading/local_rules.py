"""Local Rules as the Committee adopted them: a number, perhaps words, who decided it and for which days.

Everything is typed. The Rules of Golf (R&A and USGA, 2023, Committee Procedures, section 8) leave Local Rules to the
Committee; which of them fits a piece of work is nothing that a program can know.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Annotated, Final

from pydantic import AfterValidator, BeforeValidator, Field, model_validator

from swardcast.reading.schema import Day, Model, Text, Words, wrong
from swardcast.records.plan import LocalRule

__all__ = ["ONLY_THE_COMMITTEE", "LocalRuleItem", "check_is_the_committee", "local_rules_from", "rule_number"]

ONLY_THE_COMMITTEE: Final = "Only the Committee can adopt a Local Rule."
"""The hint where somebody else is named, or nobody."""

_NUMBER: Final = re.compile(r"^[A-Z]-\d{1,2}(?:\.\d{1,2})?$")
_NEARLY: Final = re.compile(r"\b([A-Za-z])[\s-]?(\d{1,2}(?:\.\d{1,2})?)(?![\d.])")
_STAFF: Final = re.compile(r"\b(?:manager|green\w*keepers?|superintendents?|staff|foreman|crew)\b", re.IGNORECASE)


def rule_number(value: object) -> str:
    """Read the number of a Model Local Rule, such as "E-4".

    Args:
        value: the number as written.

    Returns:
        The number, its letter large.

    Raises:
        PydanticCustomError: when it is no letter, hyphen and number.
    """
    text = str(value).strip()
    if _NUMBER.fullmatch(text.upper()):
        return text.upper()
    near = _NEARLY.findall(text)
    hint = f"Did you mean '{near[0][0].upper()}-{near[0][1]}'?" if len(near) == 1 else ""
    raise wrong(value, "the number of a Model Local Rule, such as 'E-4'", hint)


def check_is_the_committee(decided_by: str) -> str:
    """Refuse a Local Rule that somebody of the staff is said to have adopted.

    Args:
        decided_by: who decided it, as typed.

    Returns:
        The same.

    Raises:
        PydanticCustomError: when it is somebody of the staff.
    """
    if _STAFF.search(decided_by):
        raise wrong(decided_by, "the Committee that adopted it, such as 'the Committee'", ONLY_THE_COMMITTEE)
    return decided_by


class LocalRuleItem(Model):
    """One Local Rule that is in force, or is to be, because of a job."""

    rule: Annotated[str, BeforeValidator(rule_number)]
    says: Words = ""
    decided_by: Annotated[Text, AfterValidator(check_is_the_committee)]
    starts: Day | None = Field(default=None, alias="from")
    until: Day | None = None

    @model_validator(mode="after")
    def _ends_after_it_starts(self) -> LocalRuleItem:
        if self.starts is not None and self.until is not None and self.until < self.starts:
            raise wrong(f"until {self.until}, before it begins on {self.starts}", "a last day not before the first")
        return self


def local_rules_from(items: Iterable[LocalRuleItem]) -> tuple[LocalRule, ...]:
    """Turn checked Local Rules into records.

    Args:
        items: the Local Rules of a job.

    Returns:
        The records, in order.
    """
    return tuple(
        LocalRule(rule=item.rule, says=item.says, decided_by=item.decided_by, starts=item.starts, until=item.until)
        for item in items
    )
