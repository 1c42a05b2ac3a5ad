"""Tests of entries that are not written yet."""
