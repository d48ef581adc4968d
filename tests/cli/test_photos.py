"""Why: a photo of a unit is published; its maker's place, time and name must not be."""

from __future__ import annotations

import json
import shutil
from pathlib import Path

import pytest
from PIL import Image

from cli.terminal import Folder
from photos.cameras import TOLD, jpeg, noise, panel, plain, png, webp

UNIT = "unit_specs/heron-c.yml"
CODE = "737550752543413"


def give(workspace: Folder, rows: list[str], **files: bytes) -> None:
    """Put files below photos/ and list photos in the unit's file."""
    folder = workspace.path / "unit_specs/photos"
    folder.mkdir(exist_ok=True)
    for name, data in files.items():
        (folder / name.replace("_", ".")).write_bytes(data)
    with (workspace.path / UNIT).open("a", encoding="utf-8") as file:
        file.write("photos:\n" + "".join(f"  - {{{row}}}\n" for row in rows))


def row(name: str, topic: str = "cooktop", file: str = "") -> str:
    """Return one photo as a line of the unit's file."""
    return f"id: {name}, topic: {topic}, file: {file or f'photos/{name}.jpg'}, caption: What is there"


def told(workspace: Folder) -> list[str]:
    """Return the problems that ``check`` tells of photos, in order."""
    done = workspace.run("check", "heron-c", "--json")
    assert done.code == 1
    found = json.loads(done.out)["problems"]
    return [
        f"{each['file']}:{each['line']}: {each['field']}: {each['what']}"
        for each in found
        if each["field"].startswith("photos")
    ]


def test_no_byte_of_the_site_tells_more(workspace: Folder) -> None:
    """Three kinds of files with all that they can tell; nothing of it is published."""
    files = {"a_jpg": jpeg(panel()), "b_png": png(panel()), "c_webp": webp(panel())}
    rows = [row(name[0], file=f"photos/{name.replace('_', '.')}") for name in files]
    give(workspace, rows, **files)
    done = workspace.run("build", "heron-c")
    assert done.code == 0, done.err
    site = {k: v for k, v in workspace.files().items() if k.startswith("site/")}
    photos = [name for name in site if f"{CODE}/photos/" in name]
    assert len(photos) == 3
    for name, content in site.items():
        for secret in (
            TOLD.encode(),
            b"http://ns.adobe.com",
            b"Exif\0",
            b"ICC_PROFILE",
        ):
            assert secret not in content, name
    assert not [name for name in site if Path(name).stem in "abc"]


def test_the_cache_changes_no_byte(workspace: Folder) -> None:
    """Kept, cut short or deleted: the same photos."""
    give(workspace, [row("a")], a_jpg=jpeg(panel(1600, 1200)))
    folder = workspace.path / f"site/{CODE}"

    def built() -> dict[str, bytes]:
        assert workspace.run("build", "heron-c").code == 0
        return dict(Folder(folder).files())

    first = built()
    kept = list((workspace.path / ".hatchleaf/photos").iterdir())
    assert len(kept) == 2
    for path in kept:
        path.write_bytes(path.read_bytes()[:-100])
    assert built() == first
    shutil.rmtree(workspace.path / ".hatchleaf")
    assert built() == first


def test_all_that_is_wrong_with_files(workspace: Folder, tmp_path: Path) -> None:
    """At once, each at the line of its photo."""
    outside = tmp_path / "secret.jpg"
    outside.write_bytes(jpeg(panel()))
    give(
        workspace,
        [row(name) for name in ("fine", "gone", "link", "ring", "folder", "text")],
        fine_jpg=jpeg(panel()),
        text_jpg=b"no picture",
    )
    folder = workspace.path / "unit_specs/photos"
    (folder / "link.jpg").symlink_to(outside)
    (folder / "ring.jpg").symlink_to("ring.jpg")
    (folder / "folder.jpg").mkdir()
    start = len((workspace.path / UNIT).read_text().splitlines()) - 5
    found = told(workspace)
    assert found[:2] == [
        f"{UNIT}:{start + 1}: photos[gone].file: there is no file unit_specs/photos/gone.jpg",
        f"{UNIT}:{start + 2}: photos[link].file: 'photos/link.jpg' is a link that leads out of unit_specs/",
    ]
    assert found[2].startswith(f"{UNIT}:{start + 3}: photos[ring].file: ")
    assert found[3:] == [
        f"{UNIT}:{start + 4}: photos[folder].file: there is no file unit_specs/photos/folder.jpg",
        f"{UNIT}:{start + 5}: photos[text].file: this is no picture",
    ]
    assert not (workspace.path / f"site/{CODE}").exists()


def test_a_link_within_is_followed(workspace: Folder) -> None:
    """One photo for two units need not be there twice."""
    give(workspace, [row("b")], a_jpg=jpeg(panel()))
    (workspace.path / "unit_specs/photos/b.jpg").symlink_to("a.jpg")
    assert workspace.run("check", "heron-c").code == 0


@pytest.mark.parametrize(
    ("topic", "what"),
    [
        ("cooktp", "there is no topic 'cooktp'"),
        ("lp-supply", "this unit has no topic 'lp-supply'"),
        ("home", "the front page leads on and shows no photo"),
        (
            "emergencies",
            "the page for emergencies shows no photo: nothing may come before its steps",
        ),
    ],
)
def test_topics_that_take_no_photo(workspace: Folder, topic: str, what: str) -> None:
    """What is not fitted is on no page, so there is none for its photo."""
    give(workspace, [row("a", topic)], a_jpg=jpeg(panel()))
    (line,) = told(workspace)
    assert line.endswith(f": photos[a].topic: {what}")


def test_a_models_photo_of_what_one_unit_lacks(workspace: Folder) -> None:
    """It is left out with the thing; on a unit that has the thing it is shown."""
    model = workspace.path / "unit_specs/models/sedge-e.yml"
    (workspace.path / "unit_specs/photos/a.jpg").write_bytes(jpeg(panel()))
    rows = f"photos:\n  - {{{row('a')}}}\n  - {{{row('b', 'lp-supply', 'photos/a.jpg')}}}\n"
    model.write_text(model.read_text("utf-8") + rows, "utf-8")
    done = workspace.run("build", "heron-c")
    assert done.code == 0, done.err
    folder = workspace.path / f"site/{CODE}"
    assert len(list((folder / "photos").iterdir())) == 1
    assert "<figure" in (folder / "740/index.html").read_text("utf-8")


def test_too_many_for_the_phone_copy(workspace: Folder) -> None:
    """How many fit is told, at the list."""
    files = {f"p{n}_jpg": plain(Image.fromarray(noise(400, 400, n))) for n in range(8)}
    give(workspace, [row(name[:2]) for name in files], **files)
    (line,) = told(workspace)
    assert line.endswith(
        ": photos: the first 6 of these 8 photos fit into the phone copy"
    )


def test_as_many_as_fit(workspace: Folder) -> None:
    """At the very limit the whole file is still what people can send."""
    files = {f"p{n}_jpg": plain(Image.fromarray(noise(400, 400, n))) for n in range(6)}
    give(workspace, [row(name[:2]) for name in files], **files)
    done = workspace.run("build", "heron-c")
    assert done.code == 0, done.err
    size = (workspace.path / f"site/{CODE}/manual.html").stat().st_size
    assert 550_000 < size < 1_500_000
