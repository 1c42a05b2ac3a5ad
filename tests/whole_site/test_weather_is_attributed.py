"""Every page names the services whose weather was fetched, with licence and link; without any nothing is said."""

from __future__ import annotations

import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest
from lxml import html

from swardcast.compose import Bulletin
from swardcast.fetching import met_norway, power
from swardcast.fetching.merging import sources_yaml
from swardcast.outlets.html import status_html
from swardcast.reading.folder import read_club_folder
from tests.conftest import problems_of

Run = Callable[..., subprocess.CompletedProcess[str]]
AS_OF = ("--as-of", "2027-09-14 09:30")
SOURCES = (met_norway.FORECAST.source, power.RECORD.source)


@pytest.fixture
def thankful_club(club: Path) -> Path:
    text = sources_yaml(SOURCES).replace("Based on data", "<b onclick=x>&</b> Based on data")
    (club / "weather/sources.yaml").write_text(text, encoding="utf-8")
    return club


def test_every_page_names_each_service_with_its_licence(
    thankful_club: Path, run_swardcast: Run, tmp_path: Path
) -> None:
    output = tmp_path / "site"
    done = run_swardcast("build", "--club", str(thankful_club), "--output", str(output), *AS_OF)
    assert done.returncode == 0, done.stderr
    pages = list(output.rglob("*.html"))
    assert len(pages) > 10
    for page in pages:
        root = html.parse(page).getroot()
        said = [" ".join(line.text_content().split()) for line in root.xpath("//footer/p[@class='sc-source']")]
        assert said == [
            "Weather, the forecast: MET Norway. <b onclick=x>&</b> Based on data from MET Norway, brought to means of days. Licence: CC BY 4.0.",
            f"Weather, past and recent days: NASA POWER. {power.RECORD.source.credit} Licence: CC0, NASA's policy of data use.",
        ], page
        licences = root.xpath("//footer//a[@rel='license']/@href")
        assert licences == [source.licence_address for source in SOURCES]
        assert not root.xpath("//*[@onclick]")


def test_without_fetched_weather_nothing_is_attributed(demo_site: Path) -> None:
    for page in demo_site.rglob("*.html"):
        assert not html.parse(page).getroot().xpath("//*[@class='sc-source'] | //a[@rel='license']"), page


def test_the_plain_status_page_names_them_too(thankful_club: Path, demo_bulletin: Bulletin) -> None:
    sources = read_club_folder(thankful_club).weather.sources
    root = html.fromstring(f"<div>{status_html(demo_bulletin.status, demo_bulletin.voice, sources)}</div>")
    assert root.xpath("//a[@rel='license']/@href") == [source.licence_address for source in sources]
    assert not root.xpath("//b")


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("https://api.met.no/", "javascript:alert(1)", "address: found 'javascript:alert(1)'"),
        ("https://creativecommons.org/licenses/by/4.0/", "by/4.0", "licence address: found 'by/4.0'"),
        ("  licence: CC BY 4.0\n", "", "licence: found nothing; expected the field 'licence'"),
        ("  used for: the forecast\n", "  used fr: the forecast\n", "Did you mean 'used for'?"),
        ("credit:", "fresh until: soon\n  credit:", "fresh until: found 'soon'"),
        ("credit:", "fresh until: '2027-09-14T06:00:00'\n  credit:", "expected a moment with its offset"),
    ],
)
def test_a_fault_in_the_record_of_sources_is_told(club: Path, old: str, new: str, said: str) -> None:
    text = sources_yaml([met_norway.FORECAST.source])
    assert old in text
    (club / "weather/sources.yaml").write_text(text.replace(old, new, 1), encoding="utf-8")
    assert any(said in problem and problem.startswith("weather/sources.yaml") for problem in problems_of(club))
