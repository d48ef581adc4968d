"""Why: a wrong host is printed on stickers, and a stray key would be silently lost."""

from __future__ import annotations

from pathlib import Path

import pytest

from hatchleaf.problems import ProblemsFound
from hatchleaf.settings import Settings, read_settings, settings_from
from hatchleaf.spec.source import parse

GOOD = """\
site_name: Two Herons
site_url: https://manuals.example/
docs_dir: unit_specs
plugins:
  - hatchleaf:
      phone: 555-0142
      colors: {brand: "#1f4e79"}
      preview: heron-a
"""


def problems(text: str) -> str:
    """Return what is said of the text of a `mkdocs.yml`."""
    with pytest.raises(ProblemsFound) as found:
        settings_from(parse(text.encode(), "mkdocs.yml"))
    return str(found.value)


def test_all_that_can_be_set() -> None:
    """Every key lands where it belongs."""
    assert settings_from(parse(GOOD.encode(), "mkdocs.yml")) == Settings(
        site_url="https://manuals.example/",
        host="manuals.example",
        site_name="Two Herons",
        phone="555-0142",
        brand="#1f4e79",
        preview="heron-a",
    )


def test_what_may_be_left_out() -> None:
    """A first workspace needs a name, an address and a telephone number."""
    text = (
        "site_name: Two Herons\nsite_url: https://manuals.example/\n"
        'plugins:\n  - hatchleaf:\n      phone: "+1-555-555-0142"\n'
    )
    settings = settings_from(parse(text.encode(), "mkdocs.yml"))
    assert (settings.brand, settings.preview) == ("", "")
    assert settings.phone == "+1-555-555-0142"


@pytest.mark.parametrize(
    "url",
    [
        "http://manuals.example/",
        "https://manuals.example",
        "https://manuals.example/guides/",
        "https://manuals.example:8443/",
        "https://me@manuals.example/",
        "https://Manuals.example/",
        "https://manuals_1.example/",
        "https://-manuals.example/",
        "https://manuals/",
        "https://manuals.example/?a",
        "https://manuals.example/\\n",
        "manuals.example",
    ],
)
def test_the_address_is_a_bare_host(url: str) -> None:
    """What follows the host on a sticker is ours: fifteen digits and three."""
    text = GOOD.replace("https://manuals.example/", f'"{url}"')
    assert problems(text).startswith("mkdocs.yml:2:11: site_url: ")
    assert "allowed: https://HOST/" in problems(text)


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        (
            "site_name",
            "site_nam",
            (
                "mkdocs.yml:1:1: site_nam: is not one of this file's keys\n"
                "    allowed: docs_dir, plugins, site_name, site_url\n"
                "    hint: did you mean 'site_name'?"
            ),
        ),
        (
            "docs_dir: unit_specs",
            "docs_dir: docs",
            (
                "mkdocs.yml:3:11: docs_dir: cannot be another folder\n"
                "    allowed: unit_specs"
            ),
        ),
        (
            "site_name: Two Herons",
            "site_name: Two Herons\ntheme: {name: other}",
            "mkdocs.yml:2:1: theme: is not one of this file's keys",
        ),
        (
            "      preview:",
            "      preveiw:",
            (
                "mkdocs.yml:8:7: hatchleaf.preveiw: is not one of this file's keys\n"
                "    allowed: allow_unreviewed, colors, phone, preview, statement_checked\n"
                "    hint: did you mean 'preview'?"
            ),
        ),
        (
            "brand:",
            "brant:",
            (
                "mkdocs.yml:7:16: colors.brant: is not one of this file's keys\n"
                "    allowed: brand\n"
                "    hint: did you mean 'brand'?"
            ),
        ),
        (
            '"#1f4e79"',
            "blue",
            (
                "mkdocs.yml:7:23: brand: 'blue' is not in order\n"
                "    allowed: #rrggbb in quotes"
            ),
        ),
        (
            "555-0142",
            "(555) 0142",
            (
                "mkdocs.yml:6:14: phone: '(555) 0142' is not in order\n"
                "    allowed: digits and hyphens\n"
                "    hint: such as 555-555-0142"
            ),
        ),
        ("      phone: 555-0142\n", "", "mkdocs.yml:5:5: phone: is missing"),
        (
            "heron-a",
            "../heron-a",
            "mkdocs.yml:8:16: preview: '../heron-a' is not in order",
        ),
        (
            "  - hatchleaf:",
            "  - search\n  - hatchleaf:",
            "mkdocs.yml:4:1: plugins: has to be our plug-in alone",
        ),
        (
            "Two Herons",
            "Two Herons" * 7,
            (
                "mkdocs.yml:1:12: site_name: is not a short name\n"
                "    allowed: at most 60 characters in one line"
            ),
        ),
        ("site_name: Two Herons\n", "", "site_name: is missing"),
        (
            '{brand: "#1f4e79"}',
            "blue",
            "mkdocs.yml:7:15: colors: this is not a set of keys\n    allowed: brand",
        ),
    ],
)
def test_what_is_wrong_is_named_with_its_place(old: str, new: str, said: str) -> None:
    """Each with line and column, what is allowed, and a guess at what was meant."""
    assert old in GOOD
    assert said in problems(GOOD.replace(old, new))


def test_all_problems_come_at_once() -> None:
    """Nobody should have to run a command once per mistake."""
    text = GOOD.replace("phone", "fone").replace("https", "http").replace('"#1', '"1')
    assert problems(text).count("mkdocs.yml:") == 4


def test_a_plug_in_without_settings_lacks_its_phone() -> None:
    """The short form that MkDocs knows is understood, and says what is missing."""
    text = "site_name: A\nsite_url: https://manuals.example/\nplugins:\n  - hatchleaf\n"
    assert "phone: is missing" in problems(text)


def test_no_file_is_a_problem_too(tmp_path: Path) -> None:
    """Outside of a workspace the answer is one line, not a traceback."""
    with pytest.raises(ProblemsFound, match=r"mkdocs\.yml:1:1: there is no such file"):
        read_settings(tmp_path / "mkdocs.yml", tmp_path)


@pytest.mark.parametrize(
    ("line", "allowed"),
    [("", False), ("allow_unreviewed: true", True), ("allow_unreviewed: false", False)],
)
def test_unreviewed_texts_go_out_only_by_the_word(line: str, *, allowed: bool) -> None:
    """Left out, it means no."""
    settings = settings_from(parse(f"{GOOD}      {line}\n".encode(), "mkdocs.yml"))
    assert settings.allow_unreviewed is allowed


def test_unreviewed_is_true_or_false() -> None:
    """A word that looks like consent is none."""
    assert problems(f"{GOOD}      allow_unreviewed: yes please\n") == (
        "mkdocs.yml:9:25: allow_unreviewed: 'yes please' is not in order\n"
        "    allowed: true, false\n"
        "    hint: with true, the pages say so"
    )
