"""Files are read as texts with places; bytes that are no such file are told."""

from __future__ import annotations

from pathlib import Path
from typing import Final

import pytest

from hatchleaf.problems import Place, ProblemsFound
from hatchleaf.spec import source

QUOTE: Final = "put the text in quotes"


def told(data: bytes) -> str:
    """Return what reading *data* says."""
    with pytest.raises(ProblemsFound) as found:
        source.parse(data, "x.yml")
    return str(found.value)


def test_yaml_does_not_guess() -> None:
    """Serials, times and country codes come out as they were written."""
    written = b"a: no\nb: 0927\nc: 22:30\nd: 1_000\ne: ~\nf: 2027-04-16\ng: .inf\n"
    assert source.parse(written, "x.yml").plain() == {
        "a": "no",
        "b": "0927",
        "c": "22:30",
        "d": "1_000",
        "e": "~",
        "f": "2027-04-16",
        "g": ".inf",
    }


def test_each_text_knows_its_place() -> None:
    """Lines and columns count from 1, and a mapping stands at its own key."""
    tree = source.parse(b"a:\n  b: one\n  c:\n    - id: x\n      d: two\n", "x.yml")
    assert tree.place_of("a") == Place("x.yml", 1, 1)
    assert tree.place_of("a.b") == Place("x.yml", 2, 6)
    assert tree.place_of("a.c[x].d") == Place("x.yml", 5, 10)
    assert tree.place_of("a.c.0.d") == Place("x.yml", 5, 10)
    # What is not there is looked for at the nearest place above.
    assert tree.place_of("a.c.x.nothing.at.all") == Place("x.yml", 4, 7)


def test_a_byte_order_mark_is_no_text() -> None:
    """Some editors write one; the first key is not to hold it."""
    assert source.parse(b"\xef\xbb\xbfa: b\n", "x.yml").plain() == {"a": "b"}


@pytest.mark.parametrize(
    ("data", "what", "hint"),
    [
        (b"", "1:1: the file is empty", ""),
        (b"\n# nothing\n", "3:1: the file is empty", ""),
        (b"a: b\nc: caf\xe9\n", "2:7: the file is not UTF-8", "save it so"),
        ("a: b".encode("utf-16"), "1:1: the file is not UTF-8", "save it so"),
        (
            b"words\n",
            "1:1: the file does not hold fields",
            "write lines like 'lp: none'",
        ),
        (b"- a\n", "1:1: the file does not hold fields", "write lines like 'lp: none'"),
        (b"'': a\n", "1:1: a key is empty", "write a word before the ':'"),
        (
            b"a: \xe2\x80\x8b\0",
            "1:5: the character U+0000 is not allowed",
            "take it out",
        ),
        (b"a: {\n", "2:1: the text cannot be read from here on", QUOTE),
        (
            b"a: !x b",
            "1:4: the tag '!x' is not allowed",
            "quote a text that starts with '!'",
        ),
        (
            b"*b : y\n",
            "1:1: the alias '*b' is not allowed",
            "write the text out, or quote it",
        ),
        (b'a: "\\q"', "1:5: a quoted text holds an unknown '\\'", "use single quotes"),
        (b"a: - b\n", "1:4: an item cannot stand here", "start the list in a new line"),
        (b"a\nb: c\n", "2:2: a second ': ' stands in one line", QUOTE),
    ],
)
def test_no_such_file(data: bytes, what: str, hint: str) -> None:
    """What is wrong with a file as a whole is told as plainly as its fields."""
    assert told(data) == f"x.yml:{what}" + (f"\n    hint: {hint}" if hint else "")


def test_a_file_too_large_is_not_read(tmp_path: Path) -> None:
    """A wrong file, such as a video, must not fill the memory."""
    path = tmp_path / "x.yml"
    path.write_bytes(b"a" * (source.LARGEST + 1))
    with pytest.raises(ProblemsFound) as found:
        source.read(path, tmp_path)
    expected = "x.yml:1:1: the file is too large\n    allowed: at most 1 MB"
    assert str(found.value) == expected


def test_a_file_that_is_not_there(tmp_path: Path) -> None:
    """A wrong name is a problem of the person who wrote it, not a traceback."""
    with pytest.raises(ProblemsFound) as found:
        source.read(tmp_path / "x.yml", tmp_path)
    assert str(found.value) == "x.yml:1:1: there is no such file"
    with pytest.raises(ProblemsFound) as found:
        source.read(tmp_path, tmp_path)
    assert "the file cannot be read" in str(found.value)


def test_many_aliases_end_soon() -> None:
    """A page of problems is enough; the rest of the file is not looked at."""
    assert told(b"a: [" + b"*b," * 100_000 + b"]").count("alias") == 50
