"""Why: a page is opened with one bar of signal, and the phone copy is sent by message."""

from __future__ import annotations

import io
import itertools
import random

import numpy as np
import pytest
from PIL import Image

from hatchleaf.photos.fit import COPY, SITE, Budget, fitted
from hatchleaf.photos.model import PhotosRefusedError
from photos.cameras import jpeg, noise, panel, plain

BUDGETS = {"site": SITE, "copy": COPY}


@pytest.mark.parametrize("budget", BUDGETS.values(), ids=BUDGETS)
def test_steps_go_down(budget: Budget) -> None:
    """Each step is smaller in pixels or quality, and none is larger in either."""
    rows = [(step.longest, step.quality) for step in budget.steps]
    assert all(
        b != a and b[0] <= a[0] and b[1] <= a[1] for a, b in itertools.pairwise(rows)
    )


@pytest.mark.parametrize("budget", BUDGETS.values(), ids=BUDGETS)
def test_the_last_step_is_small_enough_for_any_photo(budget: Budget) -> None:
    """So that no single photo can be refused for what it shows."""
    step = budget.steps[-1]
    worst = plain(Image.fromarray(noise(step.longest, step.longest)))
    one = fitted({"a": worst}, {})["a"]
    for picture, limit in ((one.site, SITE.each), (one.copy, COPY.each)):
        assert len(picture.data) <= limit


def test_one_photo_is_shown_well() -> None:
    """What a phone's screen can show: 1200 pixels; in the phone copy 720."""
    one = fitted({"a": jpeg(panel(4000, 3000))}, {})["a"]
    assert (one.site.width, one.site.height) == (1200, 900)
    assert (one.copy.width, one.copy.height) == (720, 540)
    for picture in (one.site, one.copy):
        with Image.open(io.BytesIO(picture.data)) as image:
            assert image.size == (picture.width, picture.height)
            colour = np.array(image.convert("RGB").getpixel((40, 40)))
        assert np.abs(colour - (230, 20, 20)).max() < 12


def _many(count: int) -> dict[str, bytes]:
    return {f"p{n}": plain(Image.fromarray(noise(400, 400, n))) for n in range(count)}


def test_all_step_down_alike() -> None:
    """Six of the worst just fit: all at the last step, none better than another."""
    found = fitted(_many(6), {})
    assert {photo.copy.width for photo in found.values()} == {400}
    total = sum(len(photo.copy.data) for photo in found.values())
    assert COPY.together * 0.9 < total <= COPY.together
    assert sum(len(photo.site.data) for photo in found.values()) <= SITE.together


def test_too_many_are_told_with_their_number() -> None:
    """The specialist learns how many fit, not only that it is too much."""
    with pytest.raises(PhotosRefusedError) as found:
        fitted(_many(8), {})
    (fault,) = found.value.faults
    assert fault.id == ""
    assert fault.what == "the first 6 of these 8 photos fit into the phone copy"
    assert fault.allowed == "0.45 MB at their least quality"
    assert fault.hint.startswith("take out 2;")


def test_all_bad_files_are_told_at_once() -> None:
    """One after the other would be one more walk to the unit for each."""
    files = {"a": b"", "good": jpeg(panel()), "b": b"no picture"}
    with pytest.raises(PhotosRefusedError) as found:
        fitted(files, {})
    assert [fault.id for fault in found.value.faults] == ["a", "b"]


def test_the_same_bytes_each_time() -> None:
    """With what was kept and without, in any order: names follow from the bytes."""
    files = {"a": jpeg(panel(1600, 1200)), "b": jpeg(noise(500, 400))}
    kept: dict[str, bytes] = {}
    first = fitted(files, kept)
    assert kept
    before = dict(kept)
    assert fitted(files, kept) == first
    assert kept == before
    again = fitted(dict(reversed(files.items())), {})
    assert dict(again) == dict(first)
    names = {picture.name for one in first.values() for picture in (one.site, one.copy)}
    assert len(names) == 4
    assert all(len(name) == 24 and name.endswith(".jpg") for name in names)


def test_what_was_kept_is_used() -> None:
    """Otherwise the cache would save nothing: a picture put there comes out."""
    kept: dict[str, bytes] = {}
    files = {"a": jpeg(panel())}
    fitted(files, kept)
    other = plain(Image.new("RGB", (300, 200)), "JPEG")
    found = fitted(files, dict.fromkeys(kept, other))
    assert found["a"].site.data == other


def test_another_photo_never_meets_what_was_kept() -> None:
    """A photo that was taken again under the same name is another one."""
    kept: dict[str, bytes] = {}
    seeds = random.Random(1).sample(range(99), 2)  # noqa: S311
    one, two = (fitted({"a": jpeg(noise(300, 300, seed))}, kept)["a"] for seed in seeds)
    assert one.site.name != two.site.name
