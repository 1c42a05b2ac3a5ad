"""Amounts in print become the layers that their sources print, and judge nothing."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from swardcast.language.voice import Voice
from swardcast.planning.published_sand import PUBLISHED, layers_mm
from swardcast.planning.sand_pictures import print_picture
from swardcast.planning.sand_year import sand_year
from swardcast.quantities import parse_sand
from tests.outlook.small_club import SmallClub, moment
from tests.planning.test_sand_year import FIRST, LAST

BY_NAME = {one.name: one for one in PUBLISHED}


@pytest.mark.parametrize(
    ("name", "density", "low_mm", "high_mm"),
    [
        ("advice-2019", 1.56, 7.6, 10.7),
        ("survey-2014", 1.56, 6.2, 6.2),
        ("trial-2017", 1.5, 5.4, 5.4),
        ("trial-2018", 1.56, 6.0, 6.0),
        ("japan-2017", 1.56, 7.7, 7.7),
        ("britain-rates", 1.5, 1.3, 5.3),
        ("britain-course", 1.5, 8.0, 8.0),
    ],
    ids=[
        "Woods 2020 prints 7.6 to 10.7 mm for 25 to 35 ft3/1000 ft2",
        "by hand 20.3 x 0.3048; Woods 2020 prints 6 mm",
        "Woods 2020 prints 5.4 mm for 81 t/ha",
        "1 L/m2 is 1 mm",
        "as printed",
        "by hand 2 and 8 kg/m2 over 1.5",
        "by hand 120 t on 1 ha: 12 kg/m2 over 1.5",
    ],
)
def test_an_amount_in_print_is_the_layer_of_its_source(
    name: str, density: float, low_mm: float, high_mm: float
) -> None:
    found = layers_mm(BY_NAME[name], density_t_per_m3=density, greens_m2=10_000)
    assert found is not None
    assert list(found) == pytest.approx([low_mm, high_mm], abs=0.05)


def test_layers_and_volumes_of_one_source_agree() -> None:
    """Woods 2020, "Sand topdressing by exact depth": 35 mm is about 115 ft3/1000 ft2. Woods 2021, "Sand topdressing and
    surface layer organic matter": 10 mm is 33 ft3/1000 ft2, and 2, 2, 2, 3 and 1 mm in five years are that."""
    assert parse_sand("115 ft3/1000 ft2").amount == pytest.approx(BY_NAME["most-2020"].low.amount, abs=0.1)
    assert parse_sand("33 ft3/1000 ft2").amount == pytest.approx(2 + 2 + 2 + 3 + 1, abs=0.1)
    assert (BY_NAME["little-2021"].low.amount, BY_NAME["little-2021"].high.amount) == (1, 3)


def test_a_mass_for_a_course_needs_the_area_of_its_greens() -> None:
    assert layers_mm(BY_NAME["britain-course"], density_t_per_m3=1.56, greens_m2=None) is None


def test_a_mass_for_18_holes_is_not_laid_on_the_greens_of_fewer(tmp_path: Path) -> None:
    """120 t on the 1,500 m2 of three greens would be 51 mm, which nobody has printed."""
    year = sand_year(SmallClub(tmp_path / "club").records(), moment("04-01"), FIRST, LAST)
    assert year.greens.area_m2 == 1500
    assert year.course_m2 is None
    eighteen = SmallClub(tmp_path / "long")
    surfaces = eighteen.folder / "surfaces.yaml"
    holes = ", ".join(f"{hole}: 500 m2" for hole in range(4, 19))
    surfaces.write_text(
        surfaces.read_text(encoding="utf-8").replace("3: {area", f"{holes}, 3: {{area"), encoding="utf-8"
    )
    assert sand_year(eighteen.records(), moment("04-01"), FIRST, LAST).course_m2 == 18 * 500


def test_each_has_a_source_with_its_year_or_that_it_has_none() -> None:
    for one in PUBLISHED:
        assert re.search(r"\b(?:19|20)\d\d\b|undated", one.source), one.name


def test_the_picture_has_each_of_them_and_the_clubs_own_on_one_axis(tmp_path: Path) -> None:
    club = SmallClub(tmp_path / "club")
    club.job("deep", "05-03", "topdressing: {sand: 60 mm}", surfaces="greens 1-3")
    voice = Voice.english(FIRST)
    picture = print_picture(sand_year(club.records(), moment("04-01"), FIRST, LAST), voice)
    assert len(picture.rows) == len(PUBLISHED) - 1  # without the mass for a course of 18 holes
    assert picture.here_mm == pytest.approx(60)
    assert picture.layers[-1].value >= 60
    (table,) = picture.told.tables
    assert [row[0] for row in table.rows] == ["These greens, used and to come", *(row.words for row in picture.rows)]
