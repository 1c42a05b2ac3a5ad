"""The signs of the course status as a browser draws them and as eyes that lack a colour see them: told apart by shape."""

from __future__ import annotations

from io import BytesIO
from itertools import combinations
from typing import Any

import numpy as np
import pytest
from jinja2 import Environment, FileSystemLoader
from numpy.typing import NDArray
from PIL import Image
from playwright.sync_api import Page

from swardcast.colours import contrast_ratio
from swardcast.outlets.preview_sign import sign_mask
from swardcast.records.plan import Play
from tests.browser.conftest import OpenPage
from tests.browser.hosting import Host
from tests.conftest import ROOT

SIZE_PX = 24
"""As in the plan of the holes on a phone."""
EYES = ("none", "protanopia", "deuteranopia", "tritanopia", "achromatopsia")
"""As Chromium simulates them (after Machado, Oliveira and Fernandes 2009): an implementation of other people's making."""
STANDS_OUT = 3
"""WCAG 2.2 (W3C, 2023), 1.4.11."""
DIFFERS = 0.25
"""Share of the ink that has to be elsewhere, or to be missing: judgement."""
AT_THE_CORNER = f"svg.sc-sign {{ position: fixed; top: 0; left: 0; width: {SIZE_PX}px; height: {SIZE_PX}px }}"

Ink = NDArray[np.float64]


def _sign(play: Play, colour_of: Play | None = None) -> str:
    """A sign by the theme's own macro; with the colour of another one where a test wants that."""
    theme = FileSystemLoader(ROOT / "site_src/theme/templates")
    macros: Any = Environment(loader=theme).get_template("_macros.html").module  # noqa: S701 - as Pelican has it
    drawn = str(macros.sign(play.value.replace(" ", "-")))
    if colour_of is None:
        return drawn
    ours, other = (f"sc-sign--{one.value.replace(' ', '-')}" for one in (play, colour_of))
    assert ours in drawn
    return drawn.replace(ours, other)


def _shown(page: Page) -> Ink:
    """The colours of each pixel, red, green and blue from 0 to 1."""
    with Image.open(BytesIO(page.screenshot(clip={"x": 0, "y": 0, "width": SIZE_PX, "height": SIZE_PX}))) as shown:
        return np.asarray(shown.convert("RGB"), dtype=np.float64) / 255


def _hex(colour: Ink) -> str:
    return "#" + "".join(f"{round(float(part) * 255):02x}" for part in colour)


def _ink(page: Page, sign: str) -> tuple[Ink, float]:
    """Where a sign is seen, from 0 to 1 by how light or dark it is alone, and its strongest contrast with the paper."""
    page.evaluate("(html) => { document.body.innerHTML = html; }", f"<main>{sign}</main>")
    seen = _shown(page)
    page.evaluate("document.querySelector('svg').style.visibility = 'hidden'")
    paper = _shown(page)
    difference = np.abs((seen - paper) @ np.array([0.2126, 0.7152, 0.0722]))  # luma, ITU-R BT.709
    at = np.unravel_index(np.argmax(difference), difference.shape)
    return difference / difference.max(), contrast_ratio(_hex(seen[at]), _hex(paper[at]))


def _elsewhere(one: Ink, other: Ink) -> float:
    return float(np.abs(one - other).sum() / max(one.sum(), other.sum()))


@pytest.fixture(params=EYES)
def page_for_eyes(request: pytest.FixtureRequest, demo_host: Host, open_page: OpenPage) -> Page:
    page = open_page(bypass_csp=True)  # a page may have no style that its site does not bring
    page.goto(demo_host.address)
    page.add_style_tag(content=AT_THE_CORNER)
    page.context.new_cdp_session(page).send("Emulation.setEmulatedVisionDeficiency", {"type": request.param})
    return page


def test_signs_are_seen_and_told_apart_by_their_shape_alone(page_for_eyes: Page) -> None:
    for theme in ("light", "dark"):
        page_for_eyes.emulate_media(color_scheme=theme)
        seen = {play: _ink(page_for_eyes, _sign(play)) for play in Play}
        assert len(seen) == 5
        for play, (ink, contrast) in seen.items():
            assert contrast >= STANDS_OUT, play
            drawn = np.asarray(sign_mask(play, SIZE_PX), dtype=np.float64) / 255
            assert _elsewhere(ink, drawn) < DIFFERS, play  # as preview pictures have it
        for (one, (ink, _)), (other, (other_ink, _)) in combinations(seen.items(), 2):
            assert _elsewhere(ink, other_ink) >= DIFFERS, (one, other)
    # It can fail: signs that differ in colour alone are found to be the same.
    in_green, _ = _ink(page_for_eyes, _sign(Play.CLOSED, colour_of=Play.OPEN))
    assert _elsewhere(seen[Play.CLOSED][0], in_green) < DIFFERS / 5
