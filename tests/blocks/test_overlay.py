"""A workspace's own blocks over the built-in ones."""

from __future__ import annotations

from pathlib import Path

import pytest

from hatchleaf.blocks.model import Library
from hatchleaf.blocks.reading import read_library
from hatchleaf.problems import ProblemsFound

BUILT_IN = Path(__file__).parents[2] / "content_blocks"


def _own(root: Path, name: str, text: str) -> Path:
    folder = root / "content_blocks" / "water"
    folder.mkdir(parents=True, exist_ok=True)
    (folder / f"{name}.md").write_text(text, "utf-8")
    return root / "content_blocks"


def _text(name: str, more: str = "", body: str = "Our own words.\n") -> str:
    return f"---\nid: {name}\ntopic: water-pump\norder: 1\n{more}---\n{body}"


def test_a_new_block_is_added(tmp_path: Path, library: Library) -> None:
    """A dealership adds its local tip without touching the library."""
    own = _own(tmp_path, "our-tip", _text("our-tip"))
    made = read_library([BUILT_IN, own], tmp_path)
    assert set(made.blocks) == {*library.blocks, "our-tip"}
    assert made.blocks["our-tip"].file == "content_blocks/water/our-tip.md"


def test_a_block_replaces_by_fingerprint(tmp_path: Path, library: Library) -> None:
    """The right fingerprint says: this text was read before it was replaced."""
    below = library.blocks["water-pump-demand"]
    more = f"replaces: {below.fingerprint}\n"
    own = _own(tmp_path, below.id, _text(below.id, more))
    made = read_library([BUILT_IN, own], tmp_path)
    assert made.blocks[below.id].body == "Our own words.\n"


def test_a_block_of_the_same_id_must_say_so(tmp_path: Path, library: Library) -> None:
    """Silence would hide the built-in text by an accident of naming."""
    below = library.blocks["water-pump-demand"]
    own = _own(tmp_path, below.id, _text(below.id))
    with pytest.raises(ProblemsFound) as found:
        read_library([BUILT_IN, own], tmp_path)
    assert str(found.value) == (
        "content_blocks/water/water-pump-demand.md:1:1: replaces: "
        "'water-pump-demand' is a built-in block; this one does not say it replaces it\n"
        f"    allowed: {below.fingerprint}\n"
        f"    hint: write 'replaces: {below.fingerprint}', or choose another id"
    )


def test_a_changed_original_is_told(tmp_path: Path, library: Library) -> None:
    """After an upgrade the list of replacements to read again makes itself."""
    below = library.blocks["water-pump-demand"]
    own = _own(tmp_path, below.id, _text(below.id, "replaces: 000000000000\n"))
    with pytest.raises(ProblemsFound) as found:
        read_library([BUILT_IN, own], tmp_path)
    assert found.value.problems[0].what == (
        "the built-in block has changed since this replacement was written"
    )
    assert found.value.problems[0].allowed == below.fingerprint
    assert found.value.problems[0].place.line == 5


def test_a_danger_box_cannot_be_dropped(tmp_path: Path, library: Library) -> None:
    """A replacement may say it better, and may not leave the danger out."""
    below = next(b for b in library.blocks.values() if "!!! danger" in b.body)
    text = (
        f"---\nid: {below.id}\ntopic: {below.topic}\norder: 1\n"
        f"replaces: {below.fingerprint}\n---\nNo worries.\n"
    )
    own = _own(tmp_path, below.id, text)
    with pytest.raises(ProblemsFound) as found:
        read_library([BUILT_IN, own], tmp_path)
    assert "warns of a danger" in found.value.problems[0].what


def test_a_dealers_topic_needs_a_dealers_number(tmp_path: Path) -> None:
    """Numbers below 900 mean the same on every unit of every dealership."""
    folder = tmp_path / "content_blocks"
    folder.mkdir()
    row = "  - {{number: {}, id: {}, system: home, title: Ours, sticker: none}}\n"
    text = "topics:\n" + row.format(899, "ours") + row.format(900, "ours-too")
    (folder / "topics.yml").write_text(text, "utf-8")
    with pytest.raises(ProblemsFound) as found:
        read_library([BUILT_IN, folder], tmp_path)
    assert [str(problem) for problem in found.value.problems] == [
        (
            "content_blocks/topics.yml:2:5: topics[0]: 899 is not a dealership's own number\n"
            "    allowed: 900 to 999"
        )
    ]


def test_a_number_is_not_given_twice(tmp_path: Path) -> None:
    """A number on a sticker leads to one page for ever."""
    folder = tmp_path / "content_blocks"
    folder.mkdir()
    (folder / "topics.yml").write_text(
        "topics:\n"
        "  - {number: 900, id: ours, system: home, title: Ours, sticker: none}\n"
        "  - {number: 900, id: more, system: home, title: More, sticker: none}\n",
        "utf-8",
    )
    with pytest.raises(ProblemsFound) as found:
        read_library([BUILT_IN, folder], tmp_path)
    assert "number 900 or id 'more' is taken already" in str(found.value)


def test_a_dealership_adds_other_names_for_search(tmp_path: Path) -> None:
    """Its search.yml adds rows; a word that it explains anew means what it says."""
    folder = tmp_path / "content_blocks"
    folder.mkdir()
    (folder / "search.yml").write_text(
        "same:\n  - [bottle house, gas locker]\nmeans:\n  ac: [air conditioner]\n",
        "utf-8",
    )
    built_in = read_library([BUILT_IN], tmp_path).synonyms
    ours = read_library([BUILT_IN, folder], tmp_path).synonyms
    assert ours.same == (*built_in.same, ("bottle house", "gas locker"))
    assert ours.means == {**built_in.means, "ac": ("air conditioner",)}
    assert built_in.means["ac"] != ours.means["ac"]


def test_other_names_are_lists(tmp_path: Path) -> None:
    """A row that is no list is a problem with its place."""
    folder = tmp_path / "content_blocks"
    folder.mkdir()
    (folder / "search.yml").write_text("same:\n  - gas, propane\n", "utf-8")
    with pytest.raises(ProblemsFound) as found:
        read_library([BUILT_IN, folder], tmp_path)
    assert str(found.value.problems[0]).startswith("content_blocks/search.yml:2:5: ")
