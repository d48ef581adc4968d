"""The codes on stickers: their address, their size, their matrix."""

from __future__ import annotations

import re

import pytest
import qrcodegen

from hatchleaf.outputs import qr
from outputs.sticker_hosts import host_of

CODE = "839201743651830"

# ISO/IEC 18004 capacity of versions 3, 4 and 5 at level Q, in data codewords of
# 8 bits (from the tables of the qrcodegen library, an independent implementation).
DATA_CODEWORDS = {
    version: qrcodegen.QrCode._get_num_data_codewords(
        version, qrcodegen.QrCode.Ecc.QUARTILE
    )
    for version in (2, 3, 4, 5)
}


def bits(host: str) -> int:
    """
    Return the length of an address in bits, by ISO/IEC 18004, 7.4.

    Each segment: 4 bits of mode, a count (8, 10 and 9 bits in versions 1 to 9), then
    8 bits a byte; 10 bits for 3 digits; 11 bits for 2 alphanumeric characters, 6 for
    a last one.
    """
    return (4 + 8 + 8 * len(f"https://{host}/")) + (4 + 10 + 50) + (4 + 9 + 28)


def reference(symbol: qr.Symbol, host: str, topic: int) -> tuple[str, ...]:
    """Return the matrix that qrcodegen draws at the same version and mask."""
    segments = [
        qrcodegen.QrSegment.make_bytes(f"https://{host}/".encode()),
        qrcodegen.QrSegment.make_numeric(CODE),
        qrcodegen.QrSegment.make_alphanumeric(f"/{topic:03d}/"),
    ]
    code = qrcodegen.QrCode.encode_segments(
        segments,
        qrcodegen.QrCode.Ecc.QUARTILE,
        symbol.version,
        symbol.version,
        symbol.mask,
        boostecl=False,
    )
    size = code.get_size()
    return tuple(
        "".join("01"[code.get_module(x, y)] for x in range(size)) for y in range(size)
    )


@pytest.mark.parametrize("length", [4, 10, 11, 15, 24, 25, 38])
def test_the_matrix_is_the_one_of_another_library(length: int) -> None:
    """An encoder that shares no code must draw the very same modules."""
    host = host_of(length)
    for topic in (0, 1, 110, 999):
        symbol = qr.symbol(host, CODE, topic)
        assert symbol.rows == reference(symbol, host, topic)
        assert qr.modules_of(symbol.version) == symbol.modules == len(symbol.rows[0])


@pytest.mark.parametrize("mask", range(8))
def test_every_mask_that_was_ever_printed_can_be_printed_again(mask: int) -> None:
    """The mask in the ledger is used, whatever the library would choose today."""
    symbol = qr.symbol("manuals.example", CODE, 210, mask=mask)
    assert symbol.mask == mask
    assert symbol.rows == reference(symbol, "manuals.example", 210)


def test_a_version_printed_before_is_kept() -> None:
    """A larger version than today's rule gives is drawn as it was."""
    symbol = qr.symbol("manuals.example", CODE, 210, version=6, mask=2)
    assert symbol.version == 6
    assert symbol.rows == reference(symbol, "manuals.example", 210)


@pytest.mark.parametrize("length", range(4, 60))
def test_the_version_is_the_smallest_that_holds_the_address(length: int) -> None:
    """The rule by the host's length against the standard's own arithmetic."""
    host = host_of(length)
    fitting = [v for v in (3, 4, 5) if bits(host) <= 8 * DATA_CODEWORDS[v]]
    assert qr.version_for(host) == (fitting[0] if fitting else None)


@pytest.mark.parametrize(
    ("length", "version"), [(10, 3), (15, 4), (24, 4), (25, 5), (38, 5), (39, None)]
)
def test_the_limits_of_hosts(length: int, version: int | None) -> None:
    """The lengths at which a domain costs a larger symbol, or is refused."""
    host = host_of(length)
    assert qr.version_for(host) == version
    if version is None:
        with pytest.raises(ValueError, match="too long"):
            qr.symbol(host, CODE, 210)
    else:
        assert qr.symbol(host, CODE, 210).version == version


def test_the_address_is_lower_case_with_digits_and_a_slash() -> None:
    """Some phones take an upper-case scheme for text; some hosts need the slash."""
    address = qr.payload("manuals.example", CODE, 7)
    assert address == "https://manuals.example/839201743651830/007/"
    assert re.fullmatch(r"https://[a-z0-9.-]+/[1-9]\d{14}/\d{3}/", address)


@pytest.mark.parametrize(
    "host",
    [
        "Manuals.example",
        "manuals.example:8080",
        "manuals.example/x",
        "manuals",
        "-a.example",
        "a-.example",
        "a..example",
        ".example",
        "example.",
        "a_b.example",
        "münch.example",
        "a b.example",
        "",
    ],
)
def test_no_address_is_made_with_a_host_that_is_none(host: str) -> None:
    """What reaches the press must be an address on every phone."""
    with pytest.raises(ValueError, match="no address"):
        qr.payload(host, CODE, 1)


@pytest.mark.parametrize(
    "code", ["", "039201743651830", CODE[:-1], CODE + "1", "8" * 14 + "x"]
)
def test_no_address_is_made_with_a_code_that_is_none(code: str) -> None:
    """Fifteen digits, the first not zero."""
    with pytest.raises(ValueError, match="no address"):
        qr.payload("manuals.example", code, 1)


@pytest.mark.parametrize("topic", [-1, 1000])
def test_no_address_is_made_with_a_topic_that_is_none(topic: int) -> None:
    """Three digits."""
    with pytest.raises(ValueError, match="no address"):
        qr.payload("manuals.example", CODE, topic)
