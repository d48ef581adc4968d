"""
A photo's bytes decoded, and nothing kept of them but upright pixels in sRGB.

A file from a camera tells where and when it was taken, on what and often by whom; a
file from anywhere may be built to fill the memory.  So the format is one of three, the
size is looked at before a pixel is, and the pixels are copied into a new image.
"""

from __future__ import annotations

import io
import struct
import warnings
from typing import Final

from PIL import Image, ImageCms

from hatchleaf.photos.model import LARGEST_FILE

MOST_PIXELS: Final = 64_000_000
"""Four bytes each while it is decoded."""
SHORTEST_SIDE: Final = 200
LONGEST_SIDE: Final = 16_000
ALLOWED: Final = "JPEG, PNG, WebP"

_FORMATS: Final = ("JPEG", "PNG", "WEBP")
_ROOM: Final = 1.5
"""Decoded larger than wanted by this much, so that making it smaller stays sharp."""
_SIGNATURES: Final = (b"\xff\xd8\xff", b"\x89PNG\r\n\x1a\n")
_ORIENTATION: Final = 0x0112  # the tag's number in Exif 2.32, table 4
_UPRIGHT: Final = {
    2: Image.Transpose.FLIP_LEFT_RIGHT,
    3: Image.Transpose.ROTATE_180,
    4: Image.Transpose.FLIP_TOP_BOTTOM,
    5: Image.Transpose.TRANSPOSE,
    6: Image.Transpose.ROTATE_270,
    7: Image.Transpose.TRANSVERSE,
    8: Image.Transpose.ROTATE_90,
}
_PAPER: Final = (255, 255, 255)
"""What shows through a transparent picture."""
# All that a decoder was seen to raise on bytes that are no picture.
_BROKEN: Final = (
    OSError,
    SyntaxError,
    ValueError,
    TypeError,
    LookupError,
    ArithmeticError,
    EOFError,
    AttributeError,
    NotImplementedError,
    struct.error,
)


class UnreadableError(Exception):
    """A file's bytes are no photo that can be published."""

    def __init__(self, what: str, allowed: str = "", hint: str = "") -> None:
        super().__init__(what)
        self.what, self.allowed, self.hint = what, allowed, hint


def decoded(data: bytes, longest: int) -> Image.Image:
    """
    Return the pixels of a photo: upright, in sRGB, on white where it is transparent.

    Args:
        data: The bytes of a JPEG, PNG or WebP file.
        longest: Pixels of the longer side; a smaller photo keeps its size.

    Returns:
        A new image of mode RGB that carries no other information.

    Raises:
        UnreadableError: It is none of these, damaged, or beyond a limit.
    """
    _refuse_other_files(data)
    with warnings.catch_warnings():
        # Of odd metadata, which is thrown away, and of sizes, which are looked at.
        warnings.simplefilter("ignore")
        try:
            return _fresh(resized(_opened(data, longest), longest))
        except (Image.DecompressionBombError, MemoryError):
            raise _too_large("it has too many pixels") from None
        except _BROKEN:
            what = "the file is damaged or cut short"
            hint = "copy it from the camera again; it opens in a viewer if it is whole"
            raise UnreadableError(what, ALLOWED, hint) from None


def _refuse_other_files(data: bytes) -> None:
    if len(data) > LARGEST_FILE:
        raise UnreadableError(
            f"the file takes {len(data) / 1e6:.0f} MB",
            f"up to {LARGEST_FILE // 1_000_000} MB",
            "export it smaller; pages show 1200 pixels of it",
        )
    if data.startswith(_SIGNATURES) or (data[:4], data[8:12]) == (b"RIFF", b"WEBP"):
        return
    if data[4:8] == b"ftyp":
        what = "this is a HEIC or AVIF file, which many phones cannot show"
        hint = "export it as JPEG, or set the camera to JPEG"
        raise UnreadableError(what, ALLOWED, hint)
    what = "this is no picture" if data else "the file is empty"
    raise UnreadableError(what, ALLOWED)


def _opened(data: bytes, longest: int) -> Image.Image:
    image: Image.Image = Image.open(io.BytesIO(data), formats=_FORMATS)
    _refuse_size(*image.size)
    # A series of pictures in one JPEG is a camera's thumbnails; the first is the photo.
    if image.format in ("PNG", "WEBP") and getattr(image, "is_animated", False):
        raise UnreadableError("it moves", "a still picture")
    # A JPEG can be decoded at a half or less, which takes a quarter of the memory.
    room = longest * _ROOM / max(image.size)
    if room < 1:
        image.draft(None, (round(image.width * room), round(image.height * room)))
    image.load()
    return _upright(_in_srgb(image), image)


def _refuse_size(width: int, height: int) -> None:
    if width * height > MOST_PIXELS or max(width, height) > LONGEST_SIDE:
        raise _too_large(f"it is {width} x {height} pixels")
    if min(width, height) < SHORTEST_SIDE:
        raise UnreadableError(
            f"it is {width} x {height} pixels",
            f"{SHORTEST_SIDE} pixels or more a side",
            "take the photo itself, not its small preview",
        )


def _too_large(what: str) -> UnreadableError:
    allowed = f"up to {MOST_PIXELS // 1_000_000} million pixels, {LONGEST_SIDE} a side"
    return UnreadableError(what, allowed, "export it smaller")


def _upright(image: Image.Image, source: Image.Image) -> Image.Image:
    try:
        turned = _UPRIGHT.get(source.getexif().get(_ORIENTATION, 1))
    except _BROKEN:
        turned = None  # nobody can tell, and the photo is good without
    return image if turned is None else image.transpose(turned)


def _in_srgb(image: Image.Image) -> Image.Image:
    """Return the image in RGB: colours as meant, on white, eight bits each."""
    if image.mode.startswith("I"):
        # Sixteen bits of gray; a conversion would cut them off instead of scaling.
        image = image.point(lambda value: value * (1 / 256)).convert("L")
        image.info.pop("transparency", None)
    profile = image.info.get("icc_profile")
    if image.mode not in ("L", "RGB", "CMYK"):
        clear = image.has_transparency_data
        image = image.convert("RGBA" if clear else "RGB")
    elif "transparency" in image.info:
        image = image.convert("RGBA")
    if image.mode == "RGBA":
        colour = _by_profile(image.convert("RGB"), profile)
        paper = Image.new("RGB", image.size, _PAPER)
        paper.paste(colour, mask=image.getchannel("A"))
        return paper
    return _by_profile(image, profile)


def _by_profile(image: Image.Image, profile: bytes | None) -> Image.Image:
    if profile:
        try:
            meant = ImageCms.ImageCmsProfile(io.BytesIO(profile))
            shown = ImageCms.createProfile("sRGB")
            found = ImageCms.profileToProfile(image, meant, shown, outputMode="RGB")
        except (ImageCms.PyCMSError, *_BROKEN):
            found = None  # a profile of something else: taken for sRGB
        if found is not None:
            return found
    return image.convert("RGB")


def resized(image: Image.Image, longest: int) -> Image.Image:
    """Return the image with its longer side of at most *longest* pixels."""
    share = longest / max(image.size)
    if share >= 1:
        return image
    size = (max(1, round(image.width * share)), max(1, round(image.height * share)))
    return image.resize(size, Image.Resampling.LANCZOS, reducing_gap=3.0)


def _fresh(image: Image.Image) -> Image.Image:
    """Return the pixels in a new image: an encoder writes what an image carries."""
    made = Image.new("RGB", image.size)
    made.paste(image)
    return made
