"""Reviews by a qualified person: what needs one, and when one counts."""

from __future__ import annotations

from pathlib import Path

import pytest
import yaml

from hatchleaf.blocks.model import Library
from hatchleaf.blocks.reading import read_block, read_library
from hatchleaf.problems import ProblemsFound

BUILT_IN = Path(__file__).parents[2] / "content_blocks"
BLOCK = "lp-which-way"
OWN = """\
---
id: our-tip
topic: {topic}
order: 1
always: yes
{more}---
Turn the valve off.
"""


def _read(root: Path, **files: str) -> Library:
    """Return the library with a workspace's own files, named without ``.yml``."""
    own = root / "content_blocks"
    own.mkdir(exist_ok=True)
    for name, text in files.items():
        ending = ".md" if text.startswith("---") else ".yml"
        (own / f"{name.replace('_', '-')}{ending}").write_text(text, "utf-8")
    return read_library([BUILT_IN, own], root)


def _problems(root: Path, **files: str) -> str:
    with pytest.raises(ProblemsFound) as found:
        _read(root, **files)
    return str(found.value)


def _review(block: str, text: str, role: str = "gas_technician") -> str:
    told = f"role: {role}, date: 2027-03-01, against: the maker's label"
    return f"{block}: {{en: {{{told}, text: {text}}}}}\n"


def test_a_review_counts(tmp_path: Path, library: Library) -> None:
    """A dealership reviews a built-in text without copying it."""
    assert library.unreviewed[BLOCK].hazards == ("gas",)
    text = library.blocks[BLOCK].wording
    made = _read(tmp_path, reviewed=_review(BLOCK, text))
    assert library.unreviewed.keys() - made.unreviewed.keys() == {BLOCK}
    review = made.blocks[BLOCK].reviewed["en"]
    assert (review.role, review.date.isoformat()) == ("gas_technician", "2027-03-01")
    assert str(review.place) == "content_blocks/reviewed.yml:1:16"


def test_a_review_of_an_older_text_is_stale(tmp_path: Path) -> None:
    """An upgrade that changes a text must not keep the name of who read the old one."""
    made = _read(tmp_path, reviewed=_review(BLOCK, "0123456789ab"))
    stale = made.unreviewed[BLOCK].stale
    assert stale
    assert stale.text == "0123456789ab"


def test_faults_of_reviews_all_at_once(tmp_path: Path, library: Library) -> None:
    """A name instead of a role, a fingerprint cut short, a block that is none."""
    text = library.blocks[BLOCK].wording
    wrong = (
        f"{BLOCK}:\n"
        "  en: {role: A. Person, date: 2027-02-30, text: 12ab, by: phone}\n"
        "lp-users: {en: {role: electrician}}\n"
    )
    said = _problems(tmp_path, reviewed=wrong)
    assert "'A. Person' is not one of the words" in said
    assert "reviewed.yml:2:14: reviewed.lp-which-way.en.role" in said
    assert "2027-02-30" in said
    assert "'12ab' is no fingerprint of a text" in said
    assert "en.against: field is missing" in said
    assert "en.by: no such field\n    allowed: against, date, role, text" in said
    assert "reviewed.lp-users.en.date: field is missing" in said
    said = _problems(tmp_path, reviewed=_review("lp-witch-way", text))
    assert "reviewed.yml:1:1: lp-witch-way: there is no block 'lp-witch-way'" in said
    assert f"did you mean '{BLOCK}'?" in said
    other = _review(BLOCK, text).replace("{en:", "{fr:")
    said = _problems(tmp_path, reviewed=other)
    assert "there is no text in the language 'fr'\n    allowed: en" in said


def test_a_review_in_the_block_itself(tmp_path: Path) -> None:
    """A dealership's own text may carry its review; changing the text ends it."""
    plain = _read(tmp_path, our_tip=OWN.format(topic="lp-supply", more=""))
    mark = plain.blocks["our-tip"].wording
    assert "our-tip" in plain.unreviewed
    more = _review("reviewed", mark)
    text = OWN.format(topic="lp-supply", more=more)
    assert "our-tip" not in _read(tmp_path, our_tip=text).unreviewed
    made = _read(tmp_path, our_tip=text.replace("off.", "on."))
    assert made.unreviewed["our-tip"].stale


def test_what_a_review_is_about() -> None:
    """Layout, order and search words are not; every text that is shown is."""
    text = (BUILT_IN / "lp" / f"{BLOCK}.md").read_text("utf-8")
    before = read_block(text.encode(), "x.md").wording

    def now(old: str, new: str) -> str:
        assert old in text
        return read_block(text.replace(old, new, 1).encode(), "x.md").wording

    assert now("reviewed: {}", "reviewed:   {}  # none") == before
    assert now("\norder: ", "\norder: 1") == before
    assert now("\nsources: [", "\nsources: [gas-law, ") == before
    assert now("\nask: [", "\nask: [how it is turned, ") == before
    assert text.endswith(".\n")
    assert now(text[-20:], text[-20:-2] + "!\n") != before
    assert now("\ntopic: lp-supply", "\ntopic: lp-outlet") != before


def test_what_nobody_has_judged_needs_a_review(tmp_path: Path) -> None:
    """A new topic is not free by being forgotten, and the dealership may free it."""
    topics = (
        "topics:\n  - {number: 910, id: our-club, system: home, "
        "title: Our club, sticker: none}\n"
    )
    text = OWN.format(topic="our-club", more="")
    made = _read(tmp_path, topics=topics, our_tip=text)
    assert made.unreviewed["our-tip"].hazards == ("what nobody has judged",)
    rules = "not_needed: [our-club]\n"
    made = _read(tmp_path, topics=topics, our_tip=text, review=rules)
    assert "our-tip" not in made.unreviewed
    made = _read(tmp_path, review="needed: {weights: [our-club]}\n")
    assert made.unreviewed["our-tip"].hazards == ("weights",)


def test_a_workspace_frees_no_built_in_topic(tmp_path: Path) -> None:
    """What the library holds for dangerous, a list of the dealership cannot free."""
    said = _problems(tmp_path, review="not_needed: [lp-supply, lp-suply]\n")
    assert "'lp-supply' needs a review\n    hint: take it out" in said
    assert "'lp-suply' is not a topic\n    hint: did you mean 'lp-supply'?" in said
    said = _problems(tmp_path, review="needed: {gass: [awning], tires: [awnin]}\n")
    assert "gass" in said


def test_a_text_on_a_dangerous_page_needs_a_review(tmp_path: Path) -> None:
    """A guest on the gas page, and a text that one of its texts calls for."""
    shared = "---\nid: our-words\ntopic: none\norder: 1\n---\nShut it.\n"
    calling = OWN.replace("Turn the valve off.", '{{{{ shared("our-words") }}}}')
    harmless = calling.format(topic="water-pump", more="")
    made = _read(tmp_path, our_tip=harmless, our_words=shared)
    assert not {"our-tip", "our-words"} & made.unreviewed.keys()
    guest = calling.format(topic="water-pump", more="also: {lp-supply: 9}\n")
    made = _read(tmp_path, our_tip=guest, our_words=shared)
    assert made.unreviewed["our-tip"].hazards == ("gas",)
    assert made.unreviewed["our-words"].hazards == ("gas",)


def test_every_built_in_topic_is_judged(library: Library) -> None:
    """Whoever adds a topic says in `review.yml` whether it can hurt someone."""
    rules = yaml.safe_load((BUILT_IN / "review.yml").read_text("utf-8"))
    judged = {name for names in rules["needed"].values() for name in names}
    assert library.topics.keys() - judged - set(rules["not_needed"]) == set()


@pytest.mark.parametrize(
    "topic",
    [
        "emergencies",
        "lp-supply",
        "lp-outlet",
        "shore-power",
        "breakers",
        "gfci",
        "hitch",
        "tires",
        "stabilizers",
        "slides",
        "weights",
        "furnace",
        "cooktop",
    ],
)
def test_what_always_needs_a_review(library: Library, topic: str) -> None:
    """Gas, mains, brakes, tires, lifting, weights, emergencies: common practice."""
    found = [block for block in library.blocks.values() if block.topic == topic]
    assert found
    assert all(block.id in library.unreviewed for block in found)
