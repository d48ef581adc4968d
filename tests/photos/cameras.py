"""Files as cameras and programs write them, with all that they tell beside the picture."""

from __future__ import annotations

import io
import struct
import zlib
from typing import Final

import numpy as np
from numpy.typing import NDArray
from PIL import Image, PngImagePlugin

Pixels = NDArray[np.uint8]

TOLD: Final = "TOLD-BY-THE-CAMERA"
"""Stands in every place where a file can hold a text."""
XMP: Final = (
    '<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:Description '
    f'xmlns:exif="http://ns.adobe.com/exif/1.0/" exif:GPSLatitude="{TOLD}"/>'
    "</x:xmpmeta>"
).encode()


def noise(width: int, height: int, seed: int = 1) -> Pixels:
    """Return black and white dots in three colours: nothing is harder to encode."""
    dots = np.random.default_rng(seed).integers(0, 2, (height, width, 3), dtype="uint8")
    return np.asarray(dots * 255, dtype="uint8")


def panel(width: int = 480, height: int = 360) -> Pixels:
    """Return a picture whose corners are red, green, blue and black, clockwise."""
    made = np.full((height, width, 3), 200, dtype="uint8")
    h, w = height // 4, width // 4
    made[:h, :w] = (230, 20, 20)
    made[:h, -w:] = (20, 200, 20)
    made[-h:, -w:] = (20, 20, 230)
    made[-h:, :w] = (0, 0, 0)
    return made


def exif(orientation: int = 1) -> Image.Exif:
    """Return what a phone writes: place, time, maker and serial number."""
    made = Image.Exif()
    made[0x010F] = made[0x0110] = made[0x013B] = TOLD  # maker, model, artist
    made[0x0112] = orientation
    made[0x8769] = {0x9003: "2027:04:14 09:30:00", 0xA431: TOLD}  # time, serial
    made[0x8825] = {1: "N", 2: (45.0, 30.0, 12.3), 3: "W", 4: (122.0, 6.0, 7.8)}
    return made


def jpeg(pixels: Pixels, orientation: int = 1, icc: bytes = b"") -> bytes:
    """Return a JPEG with Exif, XMP, IPTC, a profile, a comment and bytes after its end."""
    out = io.BytesIO()
    Image.fromarray(pixels).save(
        out,
        "JPEG",
        quality=92,
        exif=exif(orientation),
        xmp=XMP,
        comment=TOLD,
        icc_profile=icc or None,
        dpi=(300, 300),
    )
    data = out.getvalue()
    # IPTC-IIM in a Photoshop resource, and a maker's own segment with a thumbnail.
    for marker, head in ((0xED, b"Photoshop 3.0\0"), (0xE4, b"Thumb\0")):
        body = head + TOLD.encode() * 40
        data = (
            data[:2]
            + struct.pack(">BBH", 0xFF, marker, len(body) + 2)
            + body
            + data[2:]
        )
    return data + TOLD.encode() * 100


def png(pixels: Pixels, orientation: int = 1) -> bytes:
    """Return a PNG with texts of all three kinds, Exif, and bytes after its end."""
    texts = PngImagePlugin.PngInfo()
    texts.add_text("Comment", TOLD)
    texts.add_text("Software", TOLD * 20, zip=True)
    texts.add_itxt("XML:com.adobe.xmp", XMP.decode())
    out = io.BytesIO()
    Image.fromarray(pixels).save(out, "PNG", pnginfo=texts, exif=exif(orientation))
    return out.getvalue() + TOLD.encode() * 100


def webp(pixels: Pixels, orientation: int = 1) -> bytes:
    """Return a WebP with Exif and XMP."""
    out = io.BytesIO()
    Image.fromarray(pixels).save(
        out, "WEBP", quality=90, exif=exif(orientation), xmp=XMP
    )
    return out.getvalue()


def plain(image: Image.Image, form: str = "PNG", **options: object) -> bytes:
    """Return an image as a file without anything beside it."""
    out = io.BytesIO()
    image.save(out, form, **options)
    return out.getvalue()


def raw_png(width: int, height: int, depth: int, kind: int, rows: bytes) -> bytes:
    """
    Return a PNG made by hand, as its standard (ISO/IEC 15948) lays it out.

    Args:
        width: Pixels that it says it has; so is *height*.
        height: See there.
        depth: Bits of one sample.
        kind: 0 gray, 2 colour, 4 gray with alpha, 6 colour with alpha.
        rows: Each row's samples behind the number of its filter.
    """

    def chunk(name: bytes, content: bytes) -> bytes:
        check = struct.pack(">I", zlib.crc32(name + content))
        return struct.pack(">I", len(content)) + name + content + check

    head = struct.pack(">IIBBBBB", width, height, depth, kind, 0, 0, 0)
    parts = chunk(b"IHDR", head) + chunk(b"IDAT", zlib.compress(rows))
    return b"\x89PNG\r\n\x1a\n" + parts + chunk(b"IEND", b"")


def profile(colorants: tuple[tuple[float, ...], ...]) -> bytes:
    """
    Return an ICC profile of a display (ICC.1:2001-04, 6.3.3), gamma 2.2.

    Args:
        colorants: X, Y and Z of red, green and blue, adapted to D50.
    """

    def fixed(*numbers: float) -> bytes:
        return b"".join(struct.pack(">i", round(number * 65536)) for number in numbers)

    text = b"made for a test\0"
    xyz = [b"XYZ \0\0\0\0" + fixed(*each) for each in colorants]
    curve = b"curv\0\0\0\0" + struct.pack(">IH", 1, round(2.2 * 256)) + b"\0\0"
    described = b"desc\0\0\0\0" + struct.pack(">I", len(text)) + text + b"\0" * 79
    tags = [
        (b"desc", described),
        (b"cprt", b"text\0\0\0\0" + text),
        (b"wtpt", b"XYZ \0\0\0\0" + fixed(0.9642, 1.0, 0.8249)),
        *zip((b"rXYZ", b"gXYZ", b"bXYZ"), xyz, strict=True),
        *((name, curve) for name in (b"rTRC", b"gTRC", b"bTRC")),
    ]
    table, body = b"", b""
    start = 128 + 4 + 12 * len(tags)
    for name, content in tags:
        table += name + struct.pack(">II", start + len(body), len(content))
        body += content + b"\0" * (-len(content) % 4)
    size = start + len(body)
    head = struct.pack(
        ">I4s4s4s4s4s", size, b"\0" * 4, b"\x02\x10\0\0", b"mntr", b"RGB ", b"XYZ "
    )
    head += b"\0" * 12 + b"acsp" + b"\0" * 28 + fixed(0.9642, 1.0, 0.8249)
    return head.ljust(128, b"\0") + struct.pack(">I", len(tags)) + table + body
