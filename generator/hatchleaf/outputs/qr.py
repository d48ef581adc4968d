"""
The square code on a sticker: its address, its symbol version, its matrix.

Only the matrix comes from the qrcode library.  Version and mask are always forced,
since a sticker printed again years later must carry the same symbol.
"""

from __future__ import annotations

import hashlib
import re
from dataclasses import dataclass
from typing import Final

import qrcode
import qrcode.constants
import qrcode.util

ECC: Final = "Q"
"""Error correction level: Q outlives L and M under dirt, H costs a larger symbol."""

QUIET_MODULES: Final = 4
"""Width of the blank border on every side, in modules (ISO/IEC 18004)."""

HOST_LIMITS: Final = ((10, 3), (24, 4), (38, 5))
"""Longest host, in characters, and the symbol version that holds it at level Q."""

_HOST: Final = re.compile(
    r"[a-z0-9](?:[a-z0-9-]*[a-z0-9])?(?:\.[a-z0-9](?:[a-z0-9-]*[a-z0-9])?)+"
)
_CODE: Final = re.compile(r"[1-9][0-9]{14}")
_TOPICS: Final = 1000


@dataclass(frozen=True)
class Symbol:
    """A code ready to draw; every row of the matrix is text of 0 and 1, 1 is dark."""

    payload: str
    version: int
    mask: int
    rows: tuple[str, ...]

    @property
    def modules(self) -> int:
        """Return the number of modules along a side, without the quiet zone."""
        return len(self.rows)

    @property
    def digest(self) -> str:
        """Return the SHA-256 of the matrix, rows joined by line feeds."""
        return hashlib.sha256("\n".join(self.rows).encode("ascii")).hexdigest()


def host_is_plain(host: str) -> bool:
    """Return whether the host is a lower-case domain name, without a port."""
    return _HOST.fullmatch(host) is not None


def version_for(host: str) -> int | None:
    """Return the symbol version for a host, or None where the host is too long."""
    return next((v for longest, v in HOST_LIMITS if len(host) <= longest), None)


def modules_of(version: int) -> int:
    """Return the modules along a side of a version, without the quiet zone."""
    return 17 + 4 * version


def side_of(version: int) -> int:
    """Return the modules along a side of a version, with the quiet zone."""
    return modules_of(version) + 2 * QUIET_MODULES


def payload(host: str, code: str, topic: int) -> str:
    """
    Return the address that a sticker carries.

    Args:
        host: the domain name, in lower case: scanners take ``HTTPS://`` for plain text
        code: the unit's 15 digits
        topic: the topic's number, 0 to 999

    Raises:
        ValueError: if one of them is not of that form
    """
    if (
        not host_is_plain(host)
        or not _CODE.fullmatch(code)
        or topic not in range(_TOPICS)
    ):
        raise ValueError(f"no address for {host!r}, {code!r}, {topic!r}")
    return "".join(_segments(host, code, topic))


def symbol(
    host: str,
    code: str,
    topic: int,
    *,
    version: int | None = None,
    mask: int | None = None,
) -> Symbol:
    """
    Return the symbol of an address.

    Args:
        host: the domain name
        code: the unit's 15 digits
        topic: the topic's number
        version: a version printed before; by default the one for the host's length
        mask: a mask printed before, 0 to 7; by default the library's choice

    Raises:
        ValueError: if the host is too long, or a part is not of its form
    """
    address = payload(host, code, topic)
    forced = version if version is not None else version_for(host)
    if forced is None:
        raise ValueError(f"the host {host!r} is too long")
    if mask is None:
        mask = _matrix(host, code, topic, forced, None).best_mask_pattern()
    matrix = _matrix(host, code, topic, forced, mask)
    matrix.make(fit=False)
    rows = tuple("".join("01"[bool(dark)] for dark in row) for row in matrix.modules)
    return Symbol(payload=address, version=forced, mask=mask, rows=rows)


def drawn(symbol: Symbol) -> str:
    """Return the symbol with its quiet zone as SVG, one unit to a module, on white."""
    side = side_of(symbol.version)
    runs = "".join(
        f"M{run.start() + QUIET_MODULES} {y}h{run.end() - run.start()}v1"
        f"h{run.start() - run.end()}z"
        for y, row in enumerate(symbol.rows, start=QUIET_MODULES)
        for run in re.finditer("1+", row)
    )
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {side} {side}">'
        f'<path fill="#fff" d="M0 0h{side}v{side}H0z"/><path fill="#000" d="{runs}"/>'
        "</svg>"
    )


def _segments(host: str, code: str, topic: int) -> tuple[str, str, str]:
    """Return the address in three parts, each for its own encoding mode."""
    return f"https://{host}/", code, f"/{topic:03d}/"


def _matrix(
    host: str, code: str, topic: int, version: int, mask: int | None
) -> qrcode.QRCode:
    """Return the library's object, loaded; a new one each, it cannot be used twice."""
    matrix = qrcode.QRCode(
        version=version,
        error_correction=qrcode.constants.ERROR_CORRECT_Q,
        border=0,
        mask_pattern=mask,
    )
    modes = (
        qrcode.util.MODE_8BIT_BYTE,
        qrcode.util.MODE_NUMBER,
        qrcode.util.MODE_ALPHA_NUM,
    )
    for text, mode in zip(_segments(host, code, topic), modes, strict=True):
        matrix.add_data(qrcode.util.QRData(text.encode("ascii"), mode=mode), optimize=0)
    return matrix
