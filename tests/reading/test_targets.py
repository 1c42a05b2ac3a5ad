"""A club's targets for readings: read as typed, and faults in them told like all others."""

from __future__ import annotations

from pathlib import Path

import pytest

from swardcast.reading.folder import read_club_folder
from swardcast.records.course_readings import Meter
from tests.reading.breaking import CLUB, assert_said, fault, replace

SPEED = "    green speed: 9 ft 1 in to 9 ft 7 in\n"
SHARE = "    organic matter: 3.85 to 5.15 %\n"
HARDNESS = "    firmness: 86.5 to 103.5 gravities\n"

FAULTS = [
    fault(
        "a target without a unit",
        SHARE,
        "    organic matter: 3 to 5\n",
        "line «organic matter: 3 to 5», planning.targets.organic matter: found '5'; expected a target for organic matter"
        " with its unit, such as '3 to 5 %' or '5 % or less'. …",
    ),
    fault(
        "a single value",
        SHARE,
        "    organic matter: 5 %\n",
        "line «organic matter: 5 %», planning.targets.organic matter: found '5 %'; expected a target for organic matter …",
    ),
    fault(
        "a range that goes down",
        SHARE,
        "    organic matter: 5 to 3 %\n",
        "line «organic matter: 5 to 3 %», planning.targets.organic matter: found '5 to 3 %'; expected a range that goes up,"
        " such as '3 to 5 %' or '5 % or less'",
    ),
    fault(
        "ends of two meters",
        HARDNESS,
        "    firmness: 8 mm to 95 gravities\n",
        "line «firmness: 8 mm», planning.targets.firmness: found '8 mm to 95 gravities'; expected a target for firmness with"
        " its unit, such as '6 to 9 mm' or '80 to 100 gravities'. Both ends are to be read with the same meter.",
    ),
    fault(
        "a lower end whose inches nobody knows",
        SPEED,
        "    green speed: 8 to 9 ft 6 in\n",
        "line «green speed: 8 to», planning.targets.green speed: found '8'; expected a target for green speed with its unit,"
        " such as '9 ft to 10 ft'. …",
    ),
    fault(
        "a reading misspelt",
        SHARE,
        "    organic mater: 5 % or less\n",
        "line «organic mater», planning.targets.organic mater: found the unknown field 'organic mater'; expected one of:"
        " green speed, firmness, moisture, height of cut, organic matter. Did you mean 'organic matter'?",
    ),
]


@pytest.mark.parametrize(("old", "new", "says"), FAULTS)
def test_a_fault_in_the_targets(demo_club: Path, old: str, new: str, says: tuple[str, ...]) -> None:
    replace(demo_club / CLUB, old, new)
    assert_said(demo_club, CLUB, says)


@pytest.mark.parametrize(
    ("typed", "meter", "least", "most"),
    [
        ("organic matter: 3 to 5 %", Meter.SHARE, 0.03, 0.05),
        ("organic matter: from 3 % to 5 %", Meter.SHARE, 0.03, 0.05),
        ("organic matter: 5 % or less", Meter.SHARE, None, 0.05),
        ("organic matter: at most 5 %", Meter.SHARE, None, 0.05),
        ("organic matter: at least 3 %", Meter.SHARE, 0.03, None),
        ("firmness: 80 to 100 gravities", Meter.HAMMER, 80.0, 100.0),
        ("firmness: 6 to 9 mm", Meter.LENGTH, 6.0, 9.0),
        ("height of cut: 1/8 in to 3/16 in", Meter.LENGTH, 3.175, 4.7625),
    ],
)
def test_a_target_is_read_as_it_is_typed(
    demo_club: Path, typed: str, meter: Meter, least: float | None, most: float | None
) -> None:
    """An inch is 25.4 mm (exact): an eighth of it 3.175 mm, three sixteenths 4.7625 mm."""
    name, _, words = typed.partition(": ")
    replace(demo_club / CLUB, HARDNESS if name == "firmness" else SHARE, f"    {typed}\n")
    (target,) = (one for one in read_club_folder(demo_club).planning.targets if one.reading == name)
    assert (target.meter, target.typed) == (meter, words)
    assert target.least == (pytest.approx(least) if least is not None else None)
    assert target.most == (pytest.approx(most) if most is not None else None)


def test_a_green_speed_is_in_feet_and_inches(demo_club: Path) -> None:
    """9 ft 1 in are 109 in of 25.4 mm: 2,768.6 mm; 9 ft 7 in are 115: 2,921 mm."""
    (speed,) = (one for one in read_club_folder(demo_club).planning.targets if one.reading == "green speed")
    assert speed.least == pytest.approx(2768.6)
    assert speed.most == pytest.approx(2921.0)
