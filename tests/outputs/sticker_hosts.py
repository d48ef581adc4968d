"""Host names of any length, below the top-level domain reserved for examples."""

from __future__ import annotations


def host_of(length: int) -> str:
    """Return a host with that many characters (RFC 2606 reserves ``.example``)."""
    ending = ".example" if length > len(".example") else ".x"
    return (
        "manuals-of-this-dealership-and-of-all-its-neighbors-in-town"[
            : length - len(ending)
        ]
        .rstrip("-")
        .ljust(length - len(ending), "s")
        + ending
    )
