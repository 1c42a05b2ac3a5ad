"""Lets `python -m swardcast.cli` work like `swardcast`."""

from swardcast.cli.main import main

main()
