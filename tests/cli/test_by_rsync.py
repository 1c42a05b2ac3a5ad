"""The README's way to a server of one's own, line by line against an SSH server: a line that breaks harms no site."""

from __future__ import annotations

import os
import re
import shutil
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.conftest import ROOT, bytes_in

SSHD = shutil.which("sshd") or shutil.which("sshd", path="/usr/sbin:/usr/local/sbin")
NEEDED = ("rsync", "ssh", "ssh-keygen")
RECIPES = re.findall(
    r"```sh\n(.*?)```", (ROOT / "README.md").read_text(encoding="utf-8").split("### On a server of")[1], re.S
)
TURNS, ONE_FOLDER = (next(one for one in RECIPES if word in one) for word in ("ln -sfn", "--delay-updates"))
"""Two folders that take turns; and one folder, for hosts that give no more."""
CUT = 20_000
"""Bytes after which the line breaks: beyond the list of files, before the end of the new site, which has 200 kB."""

MOST_SECONDS = 60
"""A recipe takes one; a line that hangs is a fault."""


@pytest.fixture(scope="module")
def line(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder of commands: an `ssh` that reaches a server of this machine by a key that is thrown away.

    The server is started anew for each connection and speaks through a pipe, so no port is open and nothing stays.
    """
    if SSHD is None or (missing := [name for name in NEEDED if shutil.which(name) is None]):
        pytest.skip(f"this machine has no {'sshd' if SSHD is None else ' and no '.join(missing)}")
    folder = tmp_path_factory.mktemp("line")
    for key in ("host", "own"):
        subprocess.run(["ssh-keygen", "-q", "-t", "ed25519", "-N", "", "-f", str(folder / key)], check=True)
    server, client, command, start = (folder / name for name in ("sshd.conf", "ssh.conf", "ssh", "start"))
    start.write_text(
        # The administrator's sshd wants a folder that the system makes when it starts the service: it gets one of its own.
        "#!/bin/sh\n[ $(id -u) != 0 ] || [ -d /run/sshd ] || exec unshare --mount sh -c"
        f" 'mount -t tmpfs none /run && mkdir -m 755 /run/sshd && exec {SSHD} -i -f {server}'\nexec {SSHD} -i -f {server}\n",
        encoding="utf-8",
    )
    start.chmod(0o755)
    server.write_text(
        f"HostKey {folder}/host\nAuthorizedKeysFile {folder}/own.pub\nStrictModes no\nUsePAM no\nPidFile none\n"
        "PasswordAuthentication no\nKbdInteractiveAuthentication no\nPermitRootLogin prohibit-password\n",
        encoding="utf-8",
    )
    client.write_text(
        f"Host *\n  ProxyCommand {start}\n  IdentityFile {folder}/own\n  IdentitiesOnly yes\n"
        f"  IdentityAgent none\n  StrictHostKeyChecking no\n  UserKnownHostsFile /dev/null\n  LogLevel ERROR\n",
        encoding="utf-8",
    )
    command.write_text(
        f'#!/bin/sh\nif [ -n "$CUT" ]; then dd bs=1 count="$CUT" status=none | {shutil.which("ssh")} -F {client} "$@"\n'
        f'else exec {shutil.which("ssh")} -F {client} "$@"; fi\n',
        encoding="utf-8",
    )
    command.chmod(0o755)
    (folder / "swardcast").write_text('#!/bin/sh\nrm -rf site && cp -r "$BUILT" site\n', encoding="utf-8")
    (folder / "swardcast").chmod(0o755)
    tried = subprocess.run([str(command), "host", "true"], capture_output=True, text=True, check=False)
    if tried.returncode:
        pytest.skip(f"this machine's sshd lets nobody in: {tried.stderr.strip()}")
    return folder


Publish = Callable[..., int]


@pytest.fixture
def publish(line: Path, tmp_path: Path) -> Publish:
    """Run a recipe; its exit code."""
    (tmp_path / "work").mkdir()

    def run(recipe: str, built: Path, *, cut: bool = False) -> int:
        script = re.sub("^host=.*", "", recipe, flags=re.M)
        return subprocess.run(
            ["sh", "-e"],
            input=f"host=host folder={tmp_path}/served\n{script}",
            cwd=tmp_path / "work",
            env={
                **os.environ,
                "PATH": f"{line}:{os.environ['PATH']}",
                "BUILT": str(built),
                "CUT": str(CUT) if cut else "",
            },
            capture_output=True,
            text=True,
            check=False,
            timeout=MOST_SECONDS,
        ).returncode

    return run


def _site(folder: Path, word: str) -> Path:
    """A site of 40 pages of 5 kB, of which every fifth is its own, and the others say of which site they are."""
    for number in range(40):
        name = f"{word}-{number}" if number % 5 == 0 else str(number)
        (folder / name).mkdir(parents=True)
        (folder / name / "index.html").write_text(f"{word} {number}\n" * 500, encoding="utf-8")
    return folder


def test_two_folders_take_turns_and_a_line_that_breaks_leaves_the_live_one(publish: Publish, tmp_path: Path) -> None:
    old, new, live = _site(tmp_path / "old", "old"), _site(tmp_path / "new", "new"), tmp_path / "served/live"
    assert publish(TURNS, old) == 0
    assert bytes_in(live.resolve()) == bytes_in(old)
    assert publish(TURNS, new, cut=True) != 0
    assert live.readlink() == Path("a")
    assert bytes_in(live.resolve()) == bytes_in(old)
    assert any((tmp_path / "served/b").iterdir())  # so far it had come
    assert publish(TURNS, new) == 0
    assert live.readlink() == Path("b")
    assert bytes_in(live.resolve()) == bytes_in(new)
    assert publish(TURNS.splitlines()[-1].replace("$next", "a"), new) == 0  # by the last line alone: back
    assert bytes_in(live.resolve()) == bytes_in(old)


def test_one_folder_stays_whole_until_all_is_there_and_keeps_what_the_host_put_there(
    publish: Publish, tmp_path: Path
) -> None:
    old, new, served = _site(tmp_path / "old", "old"), _site(tmp_path / "new", "new"), tmp_path / "served"
    shutil.copytree(old, tmp_path / "work/site")
    assert publish(ONE_FOLDER, old) == 0
    challenge = served / ".well-known/acme-challenge/token"
    challenge.parent.mkdir(parents=True)
    challenge.write_text("proof", encoding="utf-8")
    kept = {".well-known/acme-challenge/token": b"proof"}
    shutil.rmtree(tmp_path / "work/site")
    shutil.copytree(new, tmp_path / "work/site")
    assert publish(ONE_FOLDER, new, cut=True) != 0
    left = bytes_in(served)
    assert {name: data for name, data in left.items() if ".~tmp~" not in name} == {**bytes_in(old), **kept}
    assert publish(ONE_FOLDER, new) == 0
    assert bytes_in(served) == {**bytes_in(new), **kept}
