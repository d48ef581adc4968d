"""Photos on pages: which topics may have them, and the pictures that they show."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from typing import Final

from hatchleaf.blocks.model import Library, Topic
from hatchleaf.manual.model import Image, Page, PagePhoto
from hatchleaf.photos.model import Picture, Prepared, Sources
from hatchleaf.problems import Problem, listed, suggestion
from hatchleaf.spec.load import LoadedUnit
from hatchleaf.spec.model.photos import Photo
from hatchleaf.spec.told import quoted

BARE: Final = {
    0: "the front page leads on and shows no photo",
    1: "the page for emergencies shows no photo: nothing may come before its steps",
}
"""Topics without photos, by number."""


@dataclass(frozen=True)
class Album:
    """The photos of a unit's guide, and the bytes that they show."""

    by_topic: Mapping[str, tuple[PagePhoto, ...]] = field(default_factory=dict)
    pictures: Mapping[str, bytes] = field(default_factory=dict)
    problems: tuple[Problem, ...] = ()


def album(
    loaded: LoadedUnit, library: Library, topics: Iterable[Topic], sources: Sources
) -> Album:
    """
    Return the photos of one unit.

    A photo of the model's whose topic this unit does not have is left out, as what is
    not fitted is; one of the unit's own is a problem then.

    Args:
        loaded: The unit, with the places of its fields.
        library: All content, which has the registry of topics.
        topics: The topics of this unit.
        sources: The bytes of its photos' files, and what was wrong with them.
    """
    fitted = {topic.id: topic for topic in topics}
    problems = [*sources.problems, *_topic_problems(loaded, library, fitted)]
    shown = [photo for photo in _listed(loaded) if _may_show(photo, fitted)]
    files = {
        photo.id: sources.files[photo.id]
        for photo in shown
        if photo.id in sources.files
    }
    prepared: Mapping[str, Prepared] = {}
    if files:
        # Here, since pillow is slow to import and most units need none of it.
        from hatchleaf.photos.fit import fitted as made_to_fit  # noqa: PLC0415
        from hatchleaf.photos.model import PhotosRefusedError  # noqa: PLC0415

        try:
            prepared = made_to_fit(files, sources.kept)
        except PhotosRefusedError as refused:
            for fault in refused.faults:
                path = f"photos[{fault.id}].file" if fault.id else "photos"
                problems.append(
                    Problem(
                        loaded.place_of(path),
                        path,
                        fault.what,
                        fault.allowed,
                        fault.hint,
                    )
                )
    pictures: dict[str, bytes] = {}
    by_topic: dict[str, tuple[PagePhoto, ...]] = {}
    for photo in shown:
        if photo.id in prepared:
            one = prepared[photo.id]
            pictures |= {each.name: each.data for each in (one.site, one.copy)}
            before = by_topic.get(photo.topic, ())
            by_topic[photo.topic] = (*before, _on_page(photo, one))
    return Album(by_topic, pictures, tuple(problems))


def with_photos(pages: Iterable[Page], album: Album) -> tuple[Page, ...]:
    """Return the pages with the photos of their topics, captions found by search."""
    return tuple(_with(page, album.by_topic.get(page.id, ())) for page in pages)


def _with(page: Page, photos: tuple[PagePhoto, ...]) -> Page:
    words = " ".join([page.text, *(photo.caption for photo in photos)])
    return replace(page, photos=photos, text=words) if photos else page


def _listed(loaded: LoadedUnit) -> tuple[Photo, ...]:
    photos = loaded.spec.photos
    return () if isinstance(photos, str) else photos


def _may_show(photo: Photo, fitted: Mapping[str, Topic]) -> bool:
    return photo.topic in fitted and fitted[photo.topic].number not in BARE


def _topic_problems(
    loaded: LoadedUnit, library: Library, fitted: Mapping[str, Topic]
) -> Iterator[Problem]:
    good = [name for name, topic in fitted.items() if topic.number not in BARE]
    own = loaded.place_of("code").file
    numbers = {topic.id: topic.number for topic in library.topics.values()}
    for photo in _listed(loaded):
        path = f"photos[{photo.id}].topic"
        place = loaded.place_of(path)
        if numbers.get(photo.topic) in BARE:
            what = BARE[numbers[photo.topic]]
            yield Problem(place, path, what, listed(good))
        elif photo.topic not in numbers:
            what = f"there is no topic {quoted(photo.topic)}"
            hint = suggestion(photo.topic, numbers)
            yield Problem(place, path, what, listed(good), hint)
        elif photo.topic not in fitted and place.file == own:
            what = f"this unit has no topic {quoted(photo.topic)}"
            yield Problem(place, path, what, listed(good))


def _on_page(photo: Photo, one: Prepared) -> PagePhoto:
    return PagePhoto(
        photo.caption,
        photo.alt or photo.caption,
        _image(one.site),
        _image(one.copy),
    )


def _image(picture: Picture) -> Image:
    return Image(picture.name, picture.width, picture.height)
