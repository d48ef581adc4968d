"""The documents say what is so: commands, targets and files they name exist."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from hatchleaf.cli.main import COMMANDS

ROOT = Path(__file__).parents[1]
DOCUMENTS = ("README.md", "DEVELOPERS.md", "CHANGELOG.md")
_EXAMPLES = (
    "content_blocks/reviewed.yml",
    "unit_specs/x.yml",
    "unit_specs/models/your-model.yml",
)
_CODE = re.compile(r"```.*?```|`[^`\n]+`", re.DOTALL)


def _code_of(name: str) -> str:
    """Return all that is set as code in a document."""
    text = (ROOT / name).read_text(encoding="utf-8")
    return "\n".join(_CODE.findall(text))


@pytest.mark.parametrize("name", DOCUMENTS)
def test_commands_exist(name: str) -> None:
    """A newcomer types what stands there."""
    named = re.findall(r"(?:^|[`/ ])hatchleaf ([a-z]+)", _code_of(name), re.MULTILINE)
    assert set(named) <= set(COMMANDS)
    assert named or name == "CHANGELOG.md"


def test_every_command_is_told() -> None:
    """README's table is the list of commands, in the words of anybody."""
    text = (ROOT / "README.md").read_text(encoding="utf-8")
    told = re.findall(r"^\| `hatchleaf ([a-z]+)` \|", text, re.MULTILINE)
    assert sorted(told) == sorted(COMMANDS)


@pytest.mark.parametrize("name", DOCUMENTS)
def test_make_targets_exist(name: str) -> None:
    """The same for make."""
    makefile = (ROOT / "Makefile").read_text(encoding="utf-8")
    targets = set(re.findall(r"^([a-z]+):", makefile, re.MULTILINE))
    named = re.findall(r"(?:^|`)make ([a-z]+)", _code_of(name), re.MULTILINE)
    assert set(named) <= targets


def test_make_help_tells_all() -> None:
    """``make help`` lists every target that a person would ask for."""
    makefile = (ROOT / "Makefile").read_text(encoding="utf-8")
    phony = re.search(r"^\.PHONY: (.*)$", makefile, re.MULTILINE)
    assert phony
    told = re.findall(r'echo "make ([a-z]+)', makefile)
    assert set(told) == set(phony[1].split()) - {"help", "chromium", "pango"}


@pytest.mark.parametrize("name", DOCUMENTS)
def test_paths_exist(name: str) -> None:
    """Folders and files of the project that a document names are there."""
    starts = "content_blocks|generator|tests|unit_specs|\\.ci"
    named = re.findall(rf"(?<![\w/-])((?:{starts})/[\w./-]+\w)", _code_of(name))
    wanted = set(named) - set(_EXAMPLES)
    missing = [path for path in wanted if not (ROOT / path).exists()]
    assert not missing


def test_excerpt_is_real() -> None:
    """The unit's file in README is the sample's own, shortened but not changed."""
    text = (ROOT / "README.md").read_text(encoding="utf-8")
    excerpt = re.search(r"```yaml\n(.*?)```", text, re.DOTALL)
    assert excerpt
    sample = (ROOT / "unit_specs/heron-a.yml").read_text(encoding="utf-8").splitlines()
    lines = [line for line in excerpt[1].splitlines() if line]
    positions = [sample.index(line) for line in lines]
    assert positions == sorted(positions)


@pytest.mark.parametrize("name", DOCUMENTS)
def test_links_lead_somewhere(name: str) -> None:
    """Links between documents lead to files that are there."""
    text = (ROOT / name).read_text(encoding="utf-8")
    links = re.findall(r"\]\((?!https?:)([^)#]+)", text)
    assert all((ROOT / link).exists() for link in links)
