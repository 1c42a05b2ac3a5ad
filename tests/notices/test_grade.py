"""What we count, counted again by a library; and the grade that the library gives."""

from __future__ import annotations

import subprocess
import sys

import pytest
import textstat

from swardcast.language.plain import measure
from swardcast.language.sentences import paragraphs_of
from tests.conftest import ROOT
from tests.notices.grade import counted, reading_grade

TEXTS = (
    (
        "Hollow tining takes small plugs out of the turf, so that sand and air can get in. You will see rows of small holes. "
        "Putts may bump or turn until the holes close."
    ),
    (
        "We start on Monday at seven with the 1st to the 6th, then six greens a day. Holes whose greens are shut are out of "
        "play, so expect 12 holes on each of the three days. If rain stops us we have Thursday and Friday in hand."
    ),
    (
        "Will the greens be open? They will, but don't expect a true roll - the sand needs rain! Keep your spikes on.\n\n"
        "The re-laid tees stay shut: a heel lifts turf that hasn't rooted."
    ),
    "Holes are 13 mm wide and 60 mm deep. That is 100 % of nobody's business.",
)


@pytest.mark.parametrize("text", TEXTS)
def test_the_library_counts_the_same_words_and_sentences_in_the_text_as_it_stands(text: str) -> None:
    ours = measure(text)
    assert (ours.words, ours.sentences) == (textstat.lexicon_count(text), textstat.sentence_count(text))


def test_it_does_so_too_where_our_sentences_hold_figures_and_short_forms() -> None:
    """By hand: 7, 6 and 5 words. Left alone the library ends a sentence in each short form."""
    text = "It held 6.4 % (our aim is 5.0 %). We start at 7 a.m. Monday. Some damage, e.g. dents, stays."
    sentences = [sentence for paragraph in paragraphs_of(text) for sentence in paragraph.sentences]
    assert counted(sentences) == (18, 3)
    assert (measure(text).words, measure(text).sentences) == (18, 3)
    assert textstat.sentence_count(text) != 3


def test_the_grade_is_the_published_sum() -> None:
    """0.39 x words per sentence + 11.8 x syllables per word - 15.59 (Kincaid et al. 1975).

    By hand: 12 words in 2 sentences; ho-llow ti-ning makes ma-ny small holes (10), they close in two weeks (5).
    """
    sentences = ("Hollow tining makes very many small holes.", "They close in two weeks.")
    syllables = (2 + 2 + 1 + 2 + 2 + 1 + 1) + (1 + 1 + 1 + 1 + 1)
    assert reading_grade(sentences) == pytest.approx(0.39 * 12 / 2 + 11.8 * syllables / 12 - 15.59, abs=0.01)


def test_longer_words_and_longer_sentences_raise_the_grade() -> None:
    easy = reading_grade(("We cut small holes in the green.", "They close in two weeks."))
    one = reading_grade(("We cut small holes in the green, and they close in two weeks.",))
    hard = reading_grade(
        ("Aerification facilitates infiltration.", "Regeneration necessitates approximately a fortnight.")
    )
    assert easy < one < hard


def test_the_grade_needs_no_network() -> None:
    """In a process of its own, so that nothing was loaded before, and without a home where something could lie."""
    program = (
        "import socket\n"
        "def refuse(*_, **__): raise SystemExit('the network was asked')\n"
        "socket.socket.connect = socket.getaddrinfo = socket.create_connection = refuse\n"
        "from tests.notices.grade import reading_grade\n"
        "print(reading_grade(['Hollow tining makes many small holes.']))\n"
    )
    environment = {"PYTHONPATH": f"{ROOT}:{ROOT / 'plugins'}", "HOME": "/nonexistent"}
    done = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, check=False, env=environment, cwd=ROOT
    )
    assert (done.returncode, done.stderr) == (0, "")
    assert float(done.stdout) > 0
