"""What a camera or a program noted in a picture is gone; the picture is the same, as other readers of pictures see it."""

from __future__ import annotations

import io
from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import Any

import pytest
from PIL import Image, ImageCms, ImageOps, PngImagePlugin

from swardcast.reading.badge_file import BadgeError, badge_from
from swardcast.reading.picture_notes import NotesCannotGoError, svg_without_notes, without_notes
from swardcast.reading.web_folder import problems_of_web, web_files

NOTE = "by the kitchen door of the head greenkeeper"
PLACE = (51.0, 28.0, 40.12)
"""Degrees, minutes and seconds, as a telephone writes them (Exif 2.32, "GPS Attribute Information")."""
TURNED = 6  # Exif 2.32, Orientation: to be turned by 90 degrees
XMP = f'<x:xmpmeta xmlns:x="adobe:ns:meta/"><by>{NOTE}</by></x:xmpmeta>'.encode()
PROFILE = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()


def _noted(orientation: int = 1) -> Image.Exif:
    exif = Image.Exif()
    exif[0x010E] = exif[0x013B] = NOTE  # ImageDescription, Artist
    exif[0x0112] = orientation
    exif[0x0132] = "2027:08-23 06:10:00"  # DateTime
    exif.get_ifd(0x8825).update({1: "N", 2: PLACE, 3: "W", 4: PLACE, 28: NOTE.encode()})  # GPS
    return exif


def _picture(mode: str = "RGB") -> Image.Image:
    """Thirty by twenty pixels of many colours."""
    steps = Image.linear_gradient("L").resize((30, 20))
    return Image.merge("RGB", (steps, steps.rotate(180), steps.transpose(Image.Transpose.FLIP_LEFT_RIGHT))).convert(
        mode
    )


def _saved(picture: Image.Image, form: str, **more: Any) -> bytes:
    data = io.BytesIO()
    picture.save(data, form, **more)
    return data.getvalue()


def _texts() -> PngImagePlugin.PngInfo:
    texts = PngImagePlugin.PngInfo()
    texts.add_text("Author", NOTE)
    texts.add_text("Comment", NOTE, zip=True)
    texts.add_itxt("XML:com.adobe.xmp", XMP.decode())
    texts.add(b"tIME", bytes([7, 235, 8, 23, 6, 10, 0]))
    return texts


def _animated(form: str, **more: Any) -> bytes:
    frames = [_picture("RGBA"), _picture("RGBA").rotate(90), _picture("RGBA").rotate(180)]
    return _saved(frames[0], form, save_all=True, append_images=frames[1:], duration=90, **more)


def _png(mode: str) -> bytes:
    return _saved(_picture(mode), "PNG", pnginfo=_texts(), exif=_noted())


PICTURES: dict[str, Callable[[], bytes]] = {
    "jpeg": lambda: _saved(_picture(), "JPEG", exif=_noted(), xmp=XMP, comment=NOTE, icc_profile=PROFILE),
    "jpeg turned": lambda: _saved(_picture(), "JPEG", exif=_noted(TURNED), dpi=(300, 300)),
    "jpeg progressive": lambda: _saved(_picture("L").resize((200, 90)), "JPEG", exif=_noted(), progressive=True),
    "jpeg restarting": lambda: _saved(_picture().resize((200, 90)), "JPEG", exif=_noted(), restart_marker_blocks=2),
    "jpeg for print": lambda: _saved(_picture("CMYK"), "JPEG", exif=_noted()),
    "jpeg with a film": lambda: _saved(_picture(), "JPEG", exif=_noted()) + b"\0\0\0\x18ftypmp42" + NOTE.encode(),
    "jpeg of two": lambda: _saved(_picture(), "MPO", exif=_noted(), save_all=True, append_images=[_picture()]),
    **{f"png {mode}": partial(_png, mode) for mode in ("1", "L", "LA", "P", "RGB", "RGBA")},
    "png clear": lambda: _saved(_picture("P"), "PNG", transparency=3, pnginfo=_texts(), icc_profile=PROFILE),
    "png turned": lambda: _saved(_picture(), "PNG", exif=_noted(TURNED), dpi=(300, 300)) + NOTE.encode(),
    "png moving": lambda: _animated("PNG", pnginfo=_texts()),
    "webp": lambda: _saved(_picture(), "WEBP", exif=_noted(), xmp=XMP, icc_profile=PROFILE),
    "webp lossless": lambda: _saved(_picture("RGBA"), "WEBP", lossless=True, exif=_noted(), xmp=XMP) + NOTE.encode(),
    "webp turned": lambda: _saved(_picture(), "WEBP", exif=_noted(TURNED)),
    "webp moving": lambda: _animated("WEBP", exif=_noted(), xmp=XMP),
}
by_picture = pytest.mark.parametrize("picture", PICTURES)


def _frames(data: bytes) -> list[tuple[str, tuple[int, int], bytes]]:
    """All frames as they are seen, the right way up."""
    seen = []
    with Image.open(io.BytesIO(data)) as opened:
        for number in range(1 if opened.format == "MPO" else getattr(opened, "n_frames", 1)):
            opened.seek(number)
            shown = ImageOps.exif_transpose(opened)
            shown = shown.convert("RGBA") if shown.mode in ("P", "RGBA") else shown
            seen.append((shown.mode, shown.size, shown.tobytes()))
    return seen


@by_picture
def test_no_note_and_no_place_is_left(picture: str) -> None:
    noted = PICTURES[picture]()
    bare = without_notes(noted)
    with Image.open(io.BytesIO(noted)) as before, Image.open(io.BytesIO(bare)) as after:
        assert before.getexif() or before.info.get("Author") == NOTE
        assert {*after.getexif()} <= {0x0112}
        assert not {"xmp", "comment", "Author", "Comment", "XML:com.adobe.xmp"} & {*after.info}
    for told in (NOTE.encode(), b"xmpmeta", b"2027:08", b"tIME", b"GPS"):
        assert told not in bare
    assert without_notes(bare) == bare


@by_picture
def test_the_picture_is_the_same_and_the_same_way_up(picture: str) -> None:
    noted = PICTURES[picture]()
    assert _frames(without_notes(noted)) == _frames(noted)


@by_picture
def test_its_colours_and_its_turn_stay(picture: str) -> None:
    noted = PICTURES[picture]()
    with Image.open(io.BytesIO(noted)) as before, Image.open(io.BytesIO(without_notes(noted))) as after:
        assert after.info.get("icc_profile") == before.info.get("icc_profile")
        assert after.getexif().get(0x0112, 1) == before.getexif().get(0x0112, 1)


@pytest.mark.parametrize("picture", ["jpeg turned", "png turned"])
def test_the_size_of_its_pixels_stays(picture: str) -> None:
    with Image.open(io.BytesIO(without_notes(PICTURES[picture]()))) as bare:
        assert bare.info["dpi"] == pytest.approx((300, 300), abs=0.01)


@pytest.mark.parametrize("form", ["JPEG", "PNG", "WEBP", "GIF", "BMP"])
def test_a_picture_without_notes_stays_as_it_is(form: str) -> None:
    bare = _saved(_picture(), form)
    assert without_notes(bare) == bare


@pytest.mark.parametrize("form", ["JPEG", "PNG", "WEBP"])
def test_a_picture_that_is_cut_off_anywhere_is_refused(form: str) -> None:
    whole = _saved(_picture(), form, exif=_noted())
    for end in range(12, len(whole) - 1, 7):
        with pytest.raises(NotesCannotGoError, match="cut off or damaged"):
            without_notes(whole[:end])


@pytest.mark.parametrize(
    "mark", [b"Exif\0\0MM", b"\xa9xyz\0\x15+51.47-000.29/", b"com.apple.quicktime.location.ISO6709"]
)
def test_a_film_or_picture_of_another_kind_that_may_tell_its_place_is_refused(mark: bytes) -> None:
    boxes = b"\0\0\0\x18ftypheic\0\0\0\0"
    assert without_notes(boxes) == boxes
    with pytest.raises(NotesCannotGoError, match="may tell where it was taken"):
        without_notes(boxes + mark)


@pytest.mark.parametrize("begins", [b"II*\0\x08\0\0\0", b"MM\0*\0\0\0\x08"])
def test_a_tiff_and_the_raw_pictures_of_cameras_are_refused(begins: bytes) -> None:
    """Its first directory may hold a place, tag 0x8825 (Exif 2.32, section 4.6.3; from memory)."""
    with pytest.raises(NotesCannotGoError, match="Save it as JPEG or PNG; it may tell where it was taken"):
        without_notes(begins + b"\x01\0\x25\x88")


def test_a_text_about_such_things_is_no_picture() -> None:
    for text in (b"", b"Exif\0\0", b"RIFF", b"what a GIF notes: Exif\0\0"):
        assert without_notes(text) == text


def test_pictures_of_the_folder_web_come_without_notes_and_what_is_damaged_is_named(tmp_path: Path) -> None:
    web = tmp_path / "web"
    web.mkdir()
    (web / "green.jpg").write_bytes(PICTURES["jpeg"]())
    (web / "proof.txt").write_text(NOTE, encoding="utf-8")
    brought = web_files(tmp_path)
    assert brought == {"green.jpg": without_notes(PICTURES["jpeg"]()), "proof.txt": NOTE.encode()}
    (web / "green.jpg").write_bytes(PICTURES["jpeg"]()[:-9])
    (told,) = problems_of_web(tmp_path)
    assert (told.file, told.found, told.expected, told.hint) == (
        "web/green.jpg",
        "a picture that is cut off or damaged",
        "a whole picture",
        "Save it once more: as it is, what a camera noted in it could not be taken out.",
    )


def test_a_badge_comes_without_notes() -> None:
    noted = _saved(_picture().resize((88, 88)), "PNG", pnginfo=_texts(), exif=_noted())
    assert badge_from("a.png", noted).data == without_notes(noted) != noted


BARE = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><title>An owl</title>{}<path d="M0 0h9z"/></svg>'


@pytest.mark.parametrize(
    "note",
    [f"<!-- {NOTE} -->", f"<metadata>{NOTE}</metadata>", f"<?drawn {NOTE}?>"],
)
def test_a_drawn_badge_comes_without_remarks(note: str) -> None:
    assert badge_from("a.svg", BARE.format(note).encode()).data.decode() == BARE.format("")
    if not note.startswith("<metadata"):
        assert badge_from("a.svg", f"{note}\n{BARE.format('')}\n{note}".encode()).data.decode() == BARE.format("")


def test_a_drawn_badge_comes_without_what_a_drawing_program_keeps_in_it() -> None:
    mine = f'xmlns:my="http://drawing.example/" my:file="/home/{NOTE}/owl.svg"'
    noted = BARE.format("").replace("viewBox", f"{mine} viewBox").replace("<path", '<path my:label="a"').encode()
    bare = svg_without_notes(noted)
    assert bare.decode() == BARE.format("")


def test_a_badge_that_no_parser_would_follow_down_is_refused() -> None:
    deep = f"<!-- {NOTE} -->{'<g>' * 300}{'</g>' * 300}"
    with pytest.raises(BadgeError, match="no well-formed SVG"):
        badge_from("a.svg", BARE.format(deep).encode())


@pytest.mark.parametrize("declared", ["iso-8859-1", "utf-16", "no-such"])
def test_whatever_letters_a_badge_declares_it_is_read_and_written_as_utf_8(declared: str) -> None:
    told = f'<?xml version="1.0" encoding="{declared}"?><!-- {NOTE} -->{BARE.format("<text>é</text>")}'
    assert badge_from("a.svg", told.encode()).data.decode() == BARE.format("<text>é</text>")


@pytest.mark.parametrize("inside", ["", "<g/>", "<text>metadata</text>", '<use href="#a"/>', "<text>é &amp; ü</text>"])
def test_a_drawn_badge_in_which_nothing_was_noted_stays_as_it_is(inside: str) -> None:
    told = f"<?xml version='1.0' encoding='utf-8'?>\n{BARE.format(inside)}\n".encode()
    assert badge_from("a.svg", told).data == told
