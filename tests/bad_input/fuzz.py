"""`make fuzz`: let Atheris look for bytes on which a reader fails, guided by what they reach in `swardcast.reading`.

What it finds is put below the folder of findings, once for each place that fails: the bytes, and beside them the
traceback. Each belongs into the corpus (`broken_folders`) once it is understood.
"""

from __future__ import annotations

import argparse
import hashlib
import random
import shutil
import sys
import traceback
from importlib import import_module
from pathlib import Path
from tempfile import mkdtemp
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from tests.bad_input.readers import Readers


def _options() -> argparse.Namespace:
    parser = argparse.ArgumentParser(prog="python -m tests.bad_input.fuzz", description=__doc__)
    parser.add_argument("--minutes", type=float, default=60, help="how long (default: 60)")
    parser.add_argument("--only", default="", help="one reader, such as 'plan' (default: all by turns)")
    parser.add_argument("--findings", type=Path, default=Path("build/fuzz"), help="where findings go")
    return parser.parse_args()


def _instrumented() -> Any:
    atheris: Any = import_module("atheris")
    with atheris.instrument_imports(include=["swardcast.reading", "swardcast.quantities", "swardcast.language"]):
        from tests.bad_input import readers
    return atheris, readers


class _Hunt:
    """One run: which reader reads, and what was found."""

    def __init__(self, atheris: Any, told: Any, options: argparse.Namespace) -> None:
        from tests.bad_input.small_demo import make_small_demo

        self._atheris, self._told = atheris, told
        self.findings: Path = options.findings
        self.findings.mkdir(parents=True, exist_ok=True)
        self._club = make_small_demo(Path(mkdtemp(prefix="fuzz-")) / "club")
        self.readers: Readers = told.Readers(self._club)
        self.names = [name for name in self.readers.by_name if options.only in ("", name)]
        seeds = self.readers.seeds()
        self.seeds = [(place, seed) for place, name in enumerate(self.names) for seed in seeds[name]]
        self._lines = sorted({line for _, seed in self.seeds for line in seed.splitlines()}) + list(_ODD)

    def one(self, data: bytes) -> None:
        if not data:
            return
        name = self.names[data[0] % len(self.names)]
        try:
            problems = self._told.problems_told(self.readers.by_name[name], data[1:])
            if any(not (one.file and one.found) for one in problems):
                message = f"a problem that says nothing: {problems}"
                raise AssertionError(message)
        except Exception as error:  # noqa: BLE001 - whatever it is, it is what we look for
            self._keep(name, data[1:], error)

    def _keep(self, name: str, data: bytes, error: Exception) -> None:
        frames = [f"{frame.filename}:{frame.lineno}" for frame in traceback.extract_tb(error.__traceback__)]
        ours = [frame for frame in frames if "swardcast" in frame]
        where = hashlib.sha256(repr((type(error), ours[-1:], name)).encode()).hexdigest()[:12]
        place = self.findings / f"{name}-{type(error).__name__}-{where}"
        if not place.exists():
            place.write_bytes(data)
            place.with_suffix(".txt").write_text("".join(traceback.format_exception(error)), encoding="utf-8")
            print(f"found {place}", file=sys.stderr, flush=True)

    def mutated(self, data: bytes, most: int, seed: int) -> bytes:
        """Half of the time whole lines or values change, since few changes of single bytes get past YAML."""
        dice = random.Random(seed)  # noqa: S311 - no secret
        if dice.random() < 0.4 or len(data) < 2:
            return bytes(self._atheris.Mutate(data, most))
        first, lines = data[:1], data[1:].split(b"\n")
        for _ in range(dice.choice((1, 1, 1, 2, 5))):
            at = dice.randrange(len(lines))
            match dice.randrange(6):
                case 0:
                    lines.insert(at, dice.choice(self._lines))
                case 1:
                    del lines[at]
                case 2:
                    lines[at:at] = lines[dice.randrange(len(lines)) :][: dice.randrange(1, 6)]
                case 3:
                    begins, colon, _ = lines[at].partition(b":")
                    lines[at] = begins + colon + b" " + dice.choice(_ODD)
                case 4:
                    cells = lines[at].split(b",")
                    cells[dice.randrange(len(cells))] = dice.choice(_ODD)
                    lines[at] = b",".join(cells)
                case _:
                    lines[at] = dice.choice(self._lines)
            lines = lines or [b""]
        return (first + b"\n".join(lines))[:most]

    def end(self) -> None:
        shutil.rmtree(self._club.parent, ignore_errors=True)


_ODD = (
    b"", b"0", b"-1", b"1e308", b"-0", b"nan", b".inf", b"inf", b"999999999 mm", b"9" * 400, b"9" * 5000, b"\xc2\xb2",
    b"\xd9\xa3", b"true", b"null", b"~", b"[]", b"{}", b"[1, 2]", b"{a: b}", b"&a", b"*a", b"!!python/object:os.x {}",
    b"!!binary aGVq", b"<<: *a", b"|", b">", b"'", b'"', b"0001-01-01", b"9999-12-31", b"9999-12-31 23:59",
    b"0001-01-01 00:00", b"2027-02-30", b"2027-03-28 01:30", b"2027-10-31 01:30", b"1/0 mm", b"2027-08-23 24:00",
    b"9" * 400 + b"/7 mm", b"9" * 400 + b" mm", b"0 mm", b"0 x 0 mm", b"all surfaces", b"greens 18-1", b"greens 1-" + b"9" * 400,
    b"#", b"---", b"...", b"- ", b"\t", b"\x00", b"\xff", b"\xe2\x80\xae", b"\xef\xbb\xbf", b"0 days", b"99999999 weeks",
    b"{from: 9999999999 days, source: x}", b"23:59", b"0:00", b"100 %", b"0 %", b"FREQ=YEARLY;BYDAY=53MO",
    b"FREQ=DAILY;COUNT=9999", b"FREQ=DAILY;INTERVAL=9999;BYSETPOS=366", b"19000101", b"22001231T235959Z", b"P99999W",
)  # fmt: skip


def main() -> None:
    options = _options()
    atheris, told = _instrumented()
    hunt = _Hunt(atheris, told, options)
    corpus = options.findings / "corpus"
    corpus.mkdir(parents=True, exist_ok=True)
    for number, (place, seed) in enumerate(hunt.seeds):
        (corpus / f"seed-{number}").write_bytes(bytes([place]) + seed)
    arguments = [
        sys.argv[0], str(corpus), f"-max_total_time={int(60 * options.minutes)}", "-timeout=20", "-rss_limit_mb=900",
        "-max_len=20000", f"-artifact_prefix={options.findings}/", "-print_final_stats=1", "-report_slow_units=3",
    ]  # fmt: skip
    atheris.Setup(arguments, hunt.one, custom_mutator=hunt.mutated, internal_libfuzzer=True)
    atheris.Fuzz()


if __name__ == "__main__":
    main()
