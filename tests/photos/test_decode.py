"""Why: a photo tells where it was taken, and a file from anywhere may be a trap."""

from __future__ import annotations

import io
import struct
from collections.abc import Callable

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image

from hatchleaf.photos.decode import UnreadableError, decoded
from hatchleaf.photos.fit import fitted
from hatchleaf.photos.model import LARGEST_FILE
from photos.cameras import (
    TOLD,
    exif,
    jpeg,
    noise,
    panel,
    plain,
    png,
    profile,
    raw_png,
    webp,
)

MAKERS = {"jpeg": jpeg, "png": png, "webp": webp}
# Exif 2.32, 4.6.4 "Orientation": where the stored picture's first row and first column
# are in the picture as it is meant.
FIRST_ROW_AND_COLUMN = {
    1: ("top", "left"),
    2: ("top", "right"),
    3: ("bottom", "right"),
    4: ("bottom", "left"),
    5: ("left", "top"),
    6: ("right", "top"),
    7: ("right", "bottom"),
    8: ("left", "bottom"),
}


def markers(data: bytes) -> list[tuple[int, bytes]]:
    """Return the segments of a JPEG, as ITU-T T.81, annex B, lays them out."""
    found = []
    at = 0
    while at < len(data):
        assert data[at] == 0xFF, at
        marker = data[at + 1]
        at += 2
        if marker in (0xD8, 0xD9):
            found.append((marker, b""))
            continue
        (length,) = struct.unpack(">H", data[at : at + 2])
        found.append((marker, data[at + 2 : at + length]))
        at += length
        if marker == 0xDA:
            while not (
                data[at] == 0xFF and data[at + 1] not in {0, *range(0xD0, 0xD8)}
            ):
                at += 1
    return found


def published(data: bytes) -> list[bytes]:
    """Return the bytes of a photo in all sizes that get published."""
    one = fitted({"a": data}, {})["a"]
    return [one.site.data, one.copy.data]


@pytest.mark.parametrize("form", MAKERS)
def test_the_files_do_tell(form: str) -> None:
    """Without this, the next test could look for what was never there."""
    data = MAKERS[form](panel())
    assert TOLD.encode() in data
    assert b"http://ns.adobe.com/exif" in data
    with Image.open(io.BytesIO(data)) as image:
        assert image.getexif().get_ifd(0x8825)[2] == (45.0, 30.0, 12.3)


@pytest.mark.parametrize("form", MAKERS)
def test_nothing_but_pixels_is_published(form: str) -> None:
    """Neither place nor time, maker, text, profile, thumbnail or what is behind the end."""
    for data in published(MAKERS[form](panel())):
        for told in (
            b"Exif",
            b"http://ns.adobe.com",
            b"GPS",
            b"Photoshop",
            b"ICC_PROFILE",
        ):
            assert told not in data
        assert TOLD.encode() not in data
        with Image.open(io.BytesIO(data)) as image:
            image.load()
            assert not image.getexif()
            assert set(image.info) <= {
                "jfif",
                "jfif_version",
                "jfif_unit",
                "jfif_density",
                "dpi",
                "progressive",
                "progression",
            }
        segments = markers(data)
        assert {marker for marker, _ in segments} == {
            0xD8,
            0xE0,
            0xDB,
            0xC2,
            0xC4,
            0xDA,
            0xD9,
        }
        (jfif,) = (body for marker, body in segments if marker == 0xE0)
        # JFIF 1.02: version, no unit, 1 to 1, no thumbnail.
        assert jfif == b"JFIF\0\x01\x01\0\0\x01\0\x01\0\0"
        assert data.endswith(b"\xff\xd9")


@pytest.mark.parametrize("form", MAKERS)
@pytest.mark.parametrize("orientation", FIRST_ROW_AND_COLUMN)
def test_upright(form: str, orientation: int) -> None:
    """Phones store what the sensor saw and note how it was held; the note goes."""
    upright = panel()
    row, column = FIRST_ROW_AND_COLUMN[orientation]
    stored = upright if row in ("top", "bottom") else upright.transpose(1, 0, 2)
    stored = stored[::-1] if row in ("bottom", "right") else stored
    stored = stored[:, ::-1] if column in ("right", "bottom") else stored
    found = np.asarray(
        decoded(MAKERS[form](np.ascontiguousarray(stored), orientation), 480)
    )
    assert found.shape == upright.shape
    for y, x in ((20, 20), (20, -20), (-20, -20), (-20, 20)):
        assert np.abs(found[y, x].astype(int) - upright[y, x]).max() < 40, (y, x)


@pytest.mark.parametrize(
    "bad", [exif(77).tobytes(), b"Exif\0\0MM\0*\xff\xff\xff\xff", b"Exif\0\0nonsense"]
)
def test_an_orientation_that_is_none(bad: bytes) -> None:
    """A program wrote nonsense there: the picture stays as it is."""
    data = plain(Image.fromarray(panel()), "JPEG", exif=bad)
    assert decoded(data, 480).size == (480, 360)


def test_transparent_is_on_white() -> None:
    """A drawing without a ground must not turn black."""
    clear = np.dstack([panel(), np.full((360, 480), 255, "uint8")])
    clear[100:260, 130:350, 3] = 0
    clear[100:260, 130:240, 3] = 128
    found = np.asarray(decoded(plain(Image.fromarray(clear, "RGBA")), 480))
    assert tuple(found[180, 300]) == (255, 255, 255)
    # Half of 200 and half of 255.
    assert np.abs(found[180, 180].astype(int) - 227).max() <= 1
    by_palette = Image.fromarray(panel()).quantize(8)
    data = plain(by_palette, transparency=by_palette.getpixel((0, 0)))
    assert decoded(data, 480).getpixel((5, 5)) == (255, 255, 255)


def test_four_printing_colours() -> None:
    """A file from a printing house; full yellow and magenta is red."""
    ink = Image.new("CMYK", (400, 300), (0, 255, 255, 0))
    red, green, blue = decoded(plain(ink, "JPEG"), 400).getpixel((9, 9))  # type: ignore[misc]
    assert red > 200
    assert max(green, blue) < 80


@pytest.mark.parametrize(("kind", "channels"), [(0, 1), (2, 3), (4, 2), (6, 4)])
def test_sixteen_bits(kind: int, channels: int) -> None:
    """The upper eight bits are what a screen shows: 0x8012 is 128, not white."""
    sample = struct.pack(">H", 0x8012) * (channels - (kind in (4, 6)))
    opaque = b"\xff\xff" if kind in (4, 6) else b""
    row = b"\0" + (sample + opaque) * 240
    found = decoded(raw_png(240, 240, 16, kind, row * 240), 240)
    assert found.mode == "RGB"
    assert found.getpixel((9, 9)) == (128, 128, 128)


def test_colours_are_as_they_were_meant() -> None:
    """
    A phone's wider colours are converted before the profile is thrown away.

    Colorants of Display P3 and the matrix from XYZ (D50) to sRGB are common values
    from memory; the sum is by hand.
    """
    p3 = (
        (0.51512, 0.24120, -0.00105),
        (0.29198, 0.69225, 0.04189),
        (0.15710, 0.06657, 0.78407),
    )
    to_srgb = np.array(
        [
            [3.1338561, -1.6168667, -0.4906146],
            [-0.9787684, 1.9161415, 0.0334540],
            [0.0719453, -0.2289914, 1.4052427],
        ]
    )
    colour = np.array([170, 110, 90])
    linear = to_srgb @ np.array(p3).T @ (colour / 255) ** 2.2
    wanted = 255 * (1.055 * linear ** (1 / 2.4) - 0.055)
    flat = np.broadcast_to(colour.astype("uint8"), (300, 400, 3))
    data = plain(Image.fromarray(np.ascontiguousarray(flat)), icc_profile=profile(p3))
    found = np.array(decoded(data, 400).getpixel((9, 9)))
    assert np.abs(found - wanted).max() < 1.5
    assert np.abs(found - colour).max() > 8


@pytest.mark.parametrize(
    "bad", [b"no profile", profile(((0, 0, 0),) * 3)[:200], b"\0" * 300]
)
def test_a_broken_profile_is_thrown_away(bad: bytes) -> None:
    """The picture itself is good."""
    image = Image.fromarray(panel())
    assert decoded(plain(image, icc_profile=bad), 480).size == (480, 360)
    assert decoded(plain(image.convert("L"), "JPEG", icc_profile=bad), 480).size == (
        480,
        360,
    )


def test_smaller_and_never_larger() -> None:
    """The longer side is what is asked for; a small photo is not blown up."""
    assert decoded(jpeg(panel(4000, 3000)), 1200).size == (1200, 900)
    assert decoded(jpeg(panel(3000, 4000), 6), 1200).size == (1200, 900)
    assert decoded(jpeg(panel(480, 360)), 1200).size == (480, 360)


def bomb(width: int, height: int) -> bytes:
    """Return a small file that says it is a large picture."""
    return raw_png(width, height, 8, 2, b"\0" * 1000)


def text_bomb() -> bytes:
    """Return a picture beside which a text of a hundred million letters is packed."""
    from PIL.PngImagePlugin import PngInfo  # noqa: PLC0415

    texts = PngInfo()
    texts.add_text("Comment", "x" * 100_000_000, zip=True)
    return plain(Image.fromarray(panel()), pnginfo=texts)


def moving(form: str) -> bytes:
    """Return a picture of two frames."""
    frames = [Image.fromarray(noise(240, 240, seed)) for seed in (1, 2)]
    return plain(frames[0], form, save_all=True, append_images=frames[1:])


HEIC = b"\0\0\0\x18ftypheic\0\0\0\0mif1heic" + b"\0" * 900


@pytest.mark.parametrize(
    ("data", "what"),
    [
        (b"", "the file is empty"),
        (b"GIF89a" + b"\0" * 900, "this is no picture"),
        (b"<svg xmlns='http://www.w3.org/2000/svg'/>", "this is no picture"),
        (b"%PDF-1.7" + b"\0" * 900, "this is no picture"),
        (HEIC, "this is a HEIC or AVIF file, which many phones cannot show"),
        (jpeg(noise(480, 360))[:90_000], "the file is damaged or cut short"),
        (png(panel())[:700], "the file is damaged or cut short"),
        (webp(panel())[:700], "the file is damaged or cut short"),
        (b"\xff\xd8\xff" + b"\0" * 900, "the file is damaged or cut short"),
        (text_bomb(), "the file is damaged or cut short"),
        (bomb(30_000, 30_000), "it has too many pixels"),
        (bomb(8_100, 8_000), "it is 8100 x 8000 pixels"),
        (bomb(16_001, 240), "it is 16001 x 240 pixels"),
        (jpeg(panel(640, 160)), "it is 640 x 160 pixels"),
        (moving("PNG"), "it moves"),
        (moving("WEBP"), "it moves"),
        (b"\xff\xd8\xff" + b"\0" * LARGEST_FILE, "the file takes 25 MB"),
    ],
    ids=range(17),
)
def test_what_is_no_photo(data: bytes, what: str) -> None:
    """Each is told in words that someone at a dealership can act on."""
    with pytest.raises(UnreadableError) as found:
        decoded(data, 1200)
    assert found.value.what == what
    assert found.value.allowed


def test_as_many_pixels_as_cameras_have() -> None:
    """Fifty million, as the common large sensors give; in little memory, at a half."""
    data = plain(Image.new("RGB", (8160, 6120), (90, 120, 60)), "JPEG")
    assert decoded(data, 1200).size == (1200, 900)


@pytest.mark.parametrize("maker", MAKERS.values(), ids=MAKERS)
@given(choice=st.data())
@settings(max_examples=60, deadline=None)
def test_any_bytes_are_a_photo_or_told(
    maker: Callable[..., bytes], choice: st.DataObject
) -> None:
    """A card that fails, or somebody's trap: never a traceback."""
    data = bytearray(maker(panel(240, 200)))
    for _ in range(choice.draw(st.integers(1, 12))):
        at = choice.draw(st.integers(0, len(data) - 1))
        data[at] = choice.draw(st.integers(0, 255))
    end = choice.draw(st.integers(0, len(data)))
    try:
        found = decoded(bytes(data[:end] if choice.draw(st.booleans()) else data), 200)
    except UnreadableError:
        return
    assert found.mode == "RGB"
    assert max(found.size) <= 200
    assert not found.info
