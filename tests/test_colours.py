"""Colours of a club: contrast by the definition of WCAG 2.2, written again here, and what follows from two colours."""

from __future__ import annotations

import colorsys

import pytest
from hypothesis import given
from hypothesis import strategies as st

from swardcast.colours import (
    BAND_INK,
    PAPER,
    PAPER_BY_NIGHT,
    USUAL_PALETTE,
    ColourError,
    contrast_ratio,
    palette_from,
)

COLOURS = st.integers(0, 0xFFFFFF).map(lambda number: f"#{number:06x}")


def _channels(colour: str) -> list[float]:
    return [int(colour[place : place + 2], 16) / 255 for place in (1, 3, 5)]


def _contrast(one: str, other: str) -> float:
    """WCAG 2.2 (W3C, 2023), "relative luminance" and "contrast ratio", with the threshold 0.04045 of sRGB."""

    def luminance(colour: str) -> float:
        red, green, blue = (c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in _channels(colour))
        return 0.2126 * red + 0.7152 * green + 0.0722 * blue

    dark, light = sorted((luminance(one), luminance(other)))
    return (light + 0.05) / (dark + 0.05)


def test_contrast_is_that_of_the_definition() -> None:
    assert contrast_ratio("#000000", "#ffffff") == pytest.approx(21)
    assert contrast_ratio("#767676", "#ffffff") == pytest.approx(4.54, abs=0.005)  # the lightest grey on white


@given(COLOURS, COLOURS)
def test_contrast_of_any_two_is_that_of_the_definition(one: str, other: str) -> None:
    assert contrast_ratio(one, other) == pytest.approx(_contrast(one, other), rel=0.002)


@given(COLOURS, COLOURS)
def test_whatever_is_taken_can_be_read_and_whatever_is_refused_cannot(colour: str, second: str) -> None:
    try:
        palette = palette_from(colour, second)
    except ColourError as error:
        if error.of_second:
            assert _contrast(second, colour) < 3.01
        else:
            assert _contrast(colour, PAPER) < 4.51
        return
    assert _contrast(palette.band, PAPER) >= 4.49
    assert _contrast(palette.band, palette.band_ink) >= 4.5
    assert _contrast(palette.stripe, palette.band) >= 2.99
    assert _contrast(palette.link_by_night, PAPER_BY_NIGHT) >= 6.98


@pytest.mark.parametrize(("hue", "colour"), [(0.0, "#ff6060"), (0.15, "#ffe600"), (0.33, "#30e030"), (0.6, "#60a0ff")])
def test_the_nearest_colour_that_would_do_is_taken_keeps_its_hue_and_is_not_far(hue: float, colour: str) -> None:
    with pytest.raises(ColourError) as refused:
        palette_from(colour)
    offered = refused.value.hint.split("'")[1]
    assert palette_from(offered).band == offered
    assert 4.5 <= _contrast(offered, PAPER) < 4.8  # not darker than it has to be
    turned = (colorsys.rgb_to_hsv(*_channels(offered))[0] - hue) % 1  # a hue goes round
    assert min(turned, 1 - turned) < 0.06


def test_the_usual_palette_is_what_its_own_colour_gives() -> None:
    assert palette_from(USUAL_PALETTE.band) == USUAL_PALETTE
    assert USUAL_PALETTE.band_ink == BAND_INK
