"""Each sort of file, damaged in ways that have nothing to do with what it says."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from tests.bad_input.mutations import (
    MEGABYTE,
    Row,
    a_folder,
    add,
    as_file,
    broken,
    every,
    fine,
    gone,
    insert_at,
    link_to,
    locked,
    pipe,
    put,
    recoded,
    with_byte,
)

__all__ = ["ROWS"]

CLUB, SURFACES, PLAN = "club.yaml", "surfaces.yaml", "plan/2027-late-summer.yaml"
DONE, MORNING = "log/2027/2027-08-23-1140-greens-1-to-3-done.md", "log/2027/2027-08-25-0635-morning.md"
OBSERVED, HISTORY = "weather/observed.csv", "weather/history/1997-2026.csv"
FORECAST, FIXTURES, CHOICES = "weather/forecast/2027-09-14T0600.csv", "fixtures.ics", "choices.yaml"
BADGE = "badge.svg"
_TEXTS: Final = (CLUB, SURFACES, PLAN, DONE, OBSERVED, HISTORY, FORECAST, FIXTURES, CHOICES)
_YAML: Final = (CLUB, SURFACES, PLAN, CHOICES)
_CSV: Final = (OBSERVED, HISTORY, FORECAST)
_NOT_UTF_8: Final = "a character that is not UTF-8"


def _encodings() -> Iterator[Row]:
    """Line endings and a mark at the beginning are nobody's fault; another encoding is one."""
    for file in _TEXTS:
        yield fine(f"{file} with the line ends of Windows", file, every(lambda data: data.replace(b"\n", b"\r\n")))
        yield fine(f"{file} with a mark of its encoding before it", file, every(lambda data: b"\xef\xbb\xbf" + data))
        yield broken(f"{file} in UTF-16", file, every(lambda data: data.decode().encode("utf-16"), 1), "", _NOT_UTF_8)
        yield broken(f"{file} in Latin-1", file, recoded("latin-1"), "", _NOT_UTF_8)
        yield broken(f"{file} with a NUL", file, with_byte(b"\x00", 2), "", "U+0000")
        yield broken(
            f"{file} with a single line of 10 MB",
            file,
            put(lambda: b"a" * (10 * MEGABYTE), None),
            "",
            "10 MB",
            "at most",
        )
        yield broken(
            f"{file} with two versions that nobody put together", file, insert_at(2, "<<<<<<< HEAD"), "", "two versions"
        )
    for file in (CLUB, PLAN, DONE):
        yield broken(f"{file} with a bell", file, with_byte(b"\x07", 3), "", "U+0007")
        yield broken(f"{file} with letters turned round", file, with_byte("\u202e".encode(), 3), "", "U+202E")
        yield broken(f"{file} with half a letter", file, with_byte(b"\xed\xa0\x80", 3), "", _NOT_UTF_8)
    yield broken(
        "the line ends of an old Macintosh", CLUB, every(lambda data: data.replace(b"\n", b"\r"), 1), "", "U+000D"
    )


def _places() -> Iterator[Row]:
    """What is there is no file, or a file where a folder should be."""
    for file in _TEXTS:
        yield broken(f"a folder in the place of {file}", file, a_folder, "", "a folder")
        yield broken(f"{file} as a link that leads nowhere", file, link_to("nowhere"), "", "a link that leads nowhere")
        yield broken(
            f"{file} as a link to itself", file, link_to(file.rpartition("/")[2]), "", "a link that leads nowhere"
        )
    for folder in ("plan", "log", "weather", "weather/history", "weather/forecast", "phrases", "pages", "templates"):
        yield broken(f"a file in the place of the folder {folder}", folder, as_file, "", "a file", more=True)
    for file in (CLUB, PLAN, OBSERVED, FIXTURES):
        yield broken(f"a pipe in the place of {file}", file, pipe, "", "no file that can be read")
    for file in (CLUB, SURFACES):
        yield broken(f"no {file}", file, gone, "", "no such file")
    for name, told, odd in (("\udcff", r"\udcff", "U+DCFF"), ("\n", r"\n", "U+000A"), ("\u202e", r"\u202e", "U+202E")):
        yield broken(
            f"an entry with {odd} in its name",
            f"log/2027/2027-09-13-{name}.md",
            put("---\nat: 2027-09-13 09:00\nkind: note to members\n---\nHello.\n", None),
            "",
            odd,
            at=f"log/2027/2027-09-13-{told}.md",
        )
    for file in (OBSERVED, HISTORY, FORECAST, FIXTURES, CHOICES):
        yield fine(f"no {file}", file, gone)
    for file in (CLUB, PLAN, DONE, OBSERVED, FIXTURES):
        yield broken(f"{file} that nobody may read", file, locked, "", "cannot be read", as_nobody=True)
    for folder in ("plan", "log", "weather/history"):
        said = "a folder that cannot be read"
        yield broken(f"a folder {folder} that nobody may read", folder, locked, "", said, as_nobody=True, more=True)
    yield broken("a link to the whole machine", "plan/all.yaml", link_to("/dev/zero"), "", "no file that can be read")
    yield broken(
        "the badge as a link to endless bytes", BADGE, link_to("/dev/zero"), "look.badge", "badge.svg", at=CLUB
    )
    yield broken("the badge as a folder", BADGE, a_folder, "look.badge", "badge.svg", at=CLUB)
    yield broken(
        "a folder of plans in a folder that leads to itself", "plan/round", link_to("."), "", "not read", more=True
    )
    yield broken("a club file misspelt", "clubs.yaml", put("name: A\n", None), "", "Did you mean 'club.yaml'?")
    yield broken("a plan of another ending", "plan/2028.yml", put("programme: A\n", None), "", "not read")
    yield broken("an entry of another ending", "log/2027/2027-08-30.txt", put("---\n", None), "", "not read")
    yield broken("weather in a folder of its own", "weather/old/2020.csv", put("date\n", None), "", "not read")


def _of_systems() -> Iterator[Row]:
    """Files that nobody made on purpose hold nothing up."""
    yield fine("a hidden file of the system", ".DS_Store", put(b"\x00\x01", None))
    for file in ("log/2027/._2027-08-23.md", "plan/._2027.yaml", "weather/history/._1997.csv"):
        yield fine(f"a shadow of another system, {file}", file, put(b"\x00\x05\x16\x07", None))
    yield fine("an editor's lock on an open entry", "log/2027/.#2027-08-23.md", link_to("nobody@here.1"))
    for file in ("desktop.ini", "log/2027/desktop.ini", "weather/Thumbs.db", "plan/Icon\r"):
        yield fine(f"what a desktop leaves in each folder, {file!r}", file, put(b"\x00", None))


def _empty() -> Iterator[Row]:
    yield broken("an empty club file", CLUB, put(b"", None), "name", "nothing", more=True)
    yield broken("a club file of remarks alone", CLUB, put("# later\n", None), "site", "nothing", more=True)
    yield broken("an empty surfaces file", SURFACES, put(b"", 1), "", "no surface at all")
    yield broken("an empty plan", PLAN, put(b"", None), "programme", "nothing", more=True)
    yield broken("an empty entry", DONE, put(b"", 1), "", "no fields between two lines of '---'")
    yield broken("an entry of empty lines", DONE, put(b"\n\n\n", 1), "", "no fields between two lines of '---'")
    yield broken("an entry without fields", DONE, put("---\n---\nWords.\n", None), "kind", "nothing")
    yield broken("an empty list of fixtures", FIXTURES, put(b"", None), "", "no calendar")
    for file in _CSV:
        yield broken(f"an empty {file}", file, put(b"", 1), "", "no columns")
        yield broken(f"{file} with blanks alone", file, put(b"  \n \n", 1), "", "no columns")
    yield broken("an empty badge", BADGE, put(b"", None), "look.badge", "neither SVG nor PNG", at=CLUB)


_LAUGHS: Final = "a0: &a0 [x, x]\n" + "".join(f"a{n}: &a{n} [{', '.join([f'*a{n - 1}'] * 9)}]\n" for n in range(1, 10))


def _yaml() -> Iterator[Row]:
    """What YAML can do and a club's file must not."""
    for file in _YAML:
        yield broken(
            f"{file} with a billion laughs", file, add(_LAUGHS.replace("[x", "¦[x", 1)), "", "an anchor", more=True
        )
        yield broken(
            f"{file} with a merge key", file, add("more: &more {a: 1}\n<<: ¦*more\n"), "", "an alias", more=True
        )
        yield broken(
            f"{file} with a tag of a program",
            file,
            add("x: ¦!!python/object/apply:os.getcwd []\n"),
            "x",
            "a tag",
            more=True,
        )
        yield broken(f"{file} with a tab", file, insert_at(2, "\tx: 1"), "", "tabs")
        yield broken(f"{file} with an open bracket", file, add("¦x: [1, 2\n"), "", "not YAML", "never closed")
        yield broken(f"{file} with an open quotation mark", file, add('¦x: "one\n'), "", "not YAML", "never closed")
        yield broken(f"{file} with two documents", file, add("¦---\nx: 1\n"), "", "not YAML")
        yield broken(f"{file} as a list", file, put("- a\n- b\n", 1), "", "a list of 2")
        yield broken(f"{file} as words", file, put("Our club\n", 1), "", "Our club")
        yield broken(
            f"{file} nested 800 deep", file, put("a: " + "[" * 800 + "]" * 800 + "\n", 1), "", "nest", more=True
        )
        yield broken(f"{file} nested 100,000 deep", file, put("a: " + "[" * 100_000 + "\n", 1), "", "nest")
        yield broken(
            f"{file} with a field that is a list",
            file,
            add("¦[a, b]: 1\n"),
            "",
            "the name of a field should be",
            more=True,
        )
        yield broken(
            f"{file} with 80,000 empty lists",
            file,
            put(lambda: b"a: [" + b"[]," * 80_000 + b"]\n", 1),
            "a",
            "unknown field",
            more=True,
        )
    yield broken("a club file with a field of 60,000 letters", CLUB, add("¦" + "x" * 60_000 + ": 1\n"), "", "not YAML")
    yield broken(
        "fields of an entry with a billion laughs",
        DONE,
        put(f"---\n{_LAUGHS.replace('[x', '¦[x', 1)}---\n"),
        "",
        "an anchor",
        more=True,
    )
    yield broken("fields of an entry with a tab", DONE, insert_at(3, "\tjob: x"), "", "tabs")
    yield broken(
        "fields of an entry never closed",
        DONE,
        put("---\nat: 2027-08-23 11:40\nkind: work done\n", 1),
        "",
        "no fields between",
    )
    yield broken("an entry with words before its fields", DONE, insert_at(1, "Hello"), "", "no fields between")


ROWS = (*_encodings(), *_places(), *_of_systems(), *_empty(), *_yaml())
