"""The list of sources: in order, complete, and honest about how sure each is."""

from __future__ import annotations

from pathlib import Path

import yaml

PATH = Path(__file__).resolve().parents[2] / "content_blocks/sources.yml"
SOURCES = yaml.safe_load(PATH.read_text())


def test_sources_are_sorted_by_id() -> None:
    """Several people add to it: sorted, two additions rarely collide."""
    assert list(SOURCES) == sorted(SOURCES)


def test_no_source_is_listed_twice() -> None:
    """YAML would silently keep the last one."""
    heads = [
        line for line in PATH.read_text().splitlines() if line and line[0].isalpha()
    ]

    assert len(heads) == len(SOURCES)


def test_each_source_says_who_what_and_how_sure() -> None:
    """A reader can find it, and knows whether anybody has."""
    for name, source in SOURCES.items():
        assert set(source) == {"title", "publisher", "note", "sure"}, name
        assert source["sure"] in {"looked_up", "secondary", "memory"}, name
        assert all(isinstance(text, str) and text for text in source.values()), name


def test_common_practice_admits_to_having_no_source() -> None:
    """The words that every such fact shows."""
    assert SOURCES["common-practice"]["title"] == "common practice, no source"
    assert SOURCES["common-practice"]["sure"] == "memory"
