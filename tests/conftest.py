"""What tests share: the checkout, its library, the sample units and their guides."""

from __future__ import annotations

import os
from collections.abc import Iterator, Mapping
from pathlib import Path

import pytest

from hatchleaf.blocks.model import Library
from hatchleaf.blocks.reading import read_library
from hatchleaf.manual.make import Made, make
from hatchleaf.spec.load import LoadedUnit, load_unit

ROOT = Path(__file__).parent.parent
SAMPLES = ("heron-a", "heron-b", "heron-c", "heron-d", "heron-e", "heron-f")


def pytest_addoption(parser: pytest.Parser) -> None:
    """Add the switch that rewrites the golden files."""
    parser.addoption(
        "--update-golden",
        action="store_true",
        help="write tests/golden anew instead of comparing with it",
    )


@pytest.fixture(autouse=True)
def _no_cache_left_behind() -> Iterator[None]:
    """Forget the cache that a command in this process named: not for other tests."""
    yield
    os.environ.pop("HATCHLEAF_CACHE", None)


@pytest.fixture(scope="session")
def root() -> Path:
    """Return the checkout, which is a workspace."""
    return ROOT


@pytest.fixture(scope="session")
def library() -> Library:
    """Return the built-in library."""
    return read_library([ROOT / "content_blocks"], ROOT)


@pytest.fixture(scope="session")
def samples() -> Mapping[str, LoadedUnit]:
    """Return the sample units by the names of their files."""
    return {
        name: load_unit(ROOT / "unit_specs" / f"{name}.yml", ROOT) for name in SAMPLES
    }


@pytest.fixture(scope="session")
def guides(library: Library, samples: Mapping[str, LoadedUnit]) -> Mapping[str, Made]:
    """Return the guides of the sample units by the names of their files."""
    return {
        name: make(
            loaded,
            library,
            dealer_name="Two Herons",
            dealer_phone="555-0142",
        )
        for name, loaded in samples.items()
    }
