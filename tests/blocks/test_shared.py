"""A text that many need stands once: on several pages, or where others call for it."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Final

import pytest

from facts.samples import loaded
from hatchleaf.blocks.model import Library, Worded
from hatchleaf.blocks.reading import read_library
from hatchleaf.blocks.reviews import with_sentences
from hatchleaf.manual.filling import indented
from hatchleaf.manual.make import Made, make
from hatchleaf.manual.wording import CALLED, CONTINUED
from hatchleaf.problems import Place, ProblemsFound

BUILT_IN: Final = Path(__file__).parents[2] / "content_blocks"
HEAD: Final = "sources: [common-practice]\n"

TWO_LINES: Final = f"""\
id: two-lines
topic: none
order: 0
facts: [water.capacity]
{HEAD}---
Look at the first thing.

Then {{{{ fact("water.capacity") }}}} of water.
"""
STEPS: Final = f"""\
id: two-steps
topic: none
order: 0
{HEAD}---
1. Do the second thing.
2. Do the third thing.
"""
GAS_ONLY: Final = f"""\
id: gas-only
topic: none
order: 0
when: {{lp.supply: present}}
{HEAD}---
Gas is fitted here.
"""
HOST: Final = f"""\
id: host
topic: water-pump
order: 95
also: {{home: 1, slides: 1}}
ask: [who is the host]
do: {{arrive: [{{phase: water, rank: 98, step: 'Call: {{{{ shared("gas-only") }}}}'}}]}}
{HEAD}---
## Heading of the host

!!! notice "A box"
    {{{{ shared("two-lines") }}}}
    Still in the box.

1. Do the first thing.
{{{{ shared("two-steps") }}}}
3. Do the fourth thing.

After it: {{{{ shared("gas-only") }}}}
"""


def _made(root: Path, unit: str, *texts: str) -> Made:
    folder = root / "content_blocks" / "own"
    folder.mkdir(parents=True, exist_ok=True)
    for text in texts:
        found = re.match(r"id: (.+)\n", text)
        assert found
        (folder / f"{found[1]}.md").write_text(f"---\n{text}", "utf-8")
    library = read_library([BUILT_IN, root / "content_blocks"], root)
    return make(
        loaded(unit), library, dealer_name="Two Herons", dealer_phone="555-0142"
    )


def test_a_single_sentence_is_called_from_the_list(tmp_path: Path) -> None:
    """A step that ten lists need stands in one line of one file."""
    host = HOST.replace('shared("two-steps")', 'shared("a-step")')
    (tmp_path / "content_blocks").mkdir()
    path = tmp_path / "content_blocks" / "shared.yml"
    path.write_text("a-step: '1. Call {{ dealer.name }}.'\n", "utf-8")
    made = _made(tmp_path, "heron-a", TWO_LINES, GAS_ONLY, host)
    assert "<li>Call Two Herons.</li>" in _body(made, "home")


def test_a_shared_text_says_it_of_the_item_of_its_host(tmp_path: Path) -> None:
    """Used once for each tank, a text calls for what is said of each tank."""
    host = HOST.replace("order: 95", "order: 95\neach: waste.tanks")
    of_it = STEPS.replace("second thing", "thing {{ it.id }}")
    made = _made(tmp_path, "heron-a", TWO_LINES, of_it, GAS_ONLY, host)
    assert len(set(re.findall(r"Do the thing ([^<]+)", _body(made, "home")))) > 1


@pytest.fixture
def guide(tmp_path: Path) -> Made:
    """Return the guide of a unit with gas."""
    return _made(tmp_path, "heron-a", TWO_LINES, STEPS, GAS_ONLY, HOST)


def _body(made: Made, topic: str) -> str:
    return next(page.body for page in made.pages.pages if page.id == topic)


def test_a_called_text_stays_in_its_box(guide: Made) -> None:
    """A warning's second line outside the box would be no warning."""
    boxes = re.findall(r'<div class="box .*?</div>', _body(guide, "home"), re.DOTALL)
    (box,) = (one for one in boxes if "A box" in one)
    assert "Look at the first thing." in box
    assert re.search(r'Then <a class="num"[^>]*>\d+ gal</a>[^\n]* of water.', box)
    assert "Still in the box." in box
    assert CONTINUED not in _body(guide, "home")


def test_called_steps_are_steps_of_the_list(guide: Made) -> None:
    """One list with its numbers going on, not a list in a paragraph."""
    (steps,) = re.findall(
        r'<ol class="steps">.*?</ol>', _body(guide, "home"), re.DOTALL
    )[:1]
    assert re.findall(r"Do the (\w+) thing", steps) == [
        "first",
        "second",
        "third",
        "fourth",
    ]
    assert steps.count("<li>") == 4


def test_it_stands_on_each_page_that_the_unit_has(guide: Made) -> None:
    """At home and as a guest, with ids of its own; no page is made for it."""
    assert "slides" not in {page.id for page in guide.pages.pages}
    ids = [
        name
        for topic in ("home", "water-pump")
        for name in re.findall(r'id="([^"]*heading-of-the-host)"', _body(guide, topic))
    ]
    assert ids == ["home-host-heading-of-the-host", "host-heading-of-the-host"]
    assert [p.id for p in guide.pages.pages if "Heading of the host" in p.text] == [
        "home",
        "water-pump",
    ]


def test_its_order_there_is_its_own(guide: Made) -> None:
    """First on the one page, last on the other."""
    parts = {t.topic.id: [p.block for p in t.parts] for t in guide.manual.topics}
    assert "host" in parts["home"][:2]
    assert parts["water-pump"][-1] == "host"


def test_what_counts_counts_once(guide: Made) -> None:
    """One tick in the journey, one home for the owners' words."""
    steps = [s for s in guide.manual.steps["arrive"] if s.block == "host"]
    assert [s.markdown for s in steps] == ["Call: Gas is fitted here."]
    asked = [p.id for p in guide.pages.pages if "who is the host" in p.ask]
    assert asked == ["water-pump"]


def test_a_called_text_keeps_its_condition(tmp_path: Path) -> None:
    """What is not fitted is not mentioned, through whatever text it is called."""
    made = _made(tmp_path, "heron-c", TWO_LINES, STEPS, GAS_ONLY, HOST)
    assert "Gas is fitted" not in _body(made, "home")
    assert "After it:" in _body(made, "home")


@pytest.mark.parametrize(
    ("block", "says"),
    [
        (
            HOST.replace('shared("two-steps")', 'shared("two-step")'),
            "'two-step' is not a shared text",
        ),
        (
            HOST.replace('shared("two-steps")', 'shared("water-pump-use")'),
            "'water-pump-use' is not a shared text",
        ),
        (
            STEPS.replace("2. Do", '2. {{ shared("gas-only") }} Do'),
            "a shared text may call for single sentences alone",
        ),
        (HOST.replace("home: 1", "water-pump: 1"), "is the block's own topic"),
        (HOST.replace("home: 1", "hom: 1"), "'hom' is not a topic"),
        (
            STEPS.replace("order: 0", "order: 0\nask: [what]"),
            "a shared text has no page of its own",
        ),
        (
            HOST.replace("also:", "words: [host]\nalso:"),
            "words are marked for units that meet a condition",
        ),
        (
            STEPS.replace("two-steps", "pump-off"),
            "a block is called 'pump-off' too",
        ),
    ],
)
def test_a_wrong_use_is_told(block: str, says: str, tmp_path: Path) -> None:
    """Each at its block, before anything is written."""
    with pytest.raises(ProblemsFound) as found:
        _made(tmp_path, "heron-a", TWO_LINES, STEPS, GAS_ONLY, HOST, block)
    assert says in str(found.value)


def test_a_problem_inside_is_told_at_its_own_line(tmp_path: Path) -> None:
    """The text that is wrong is the one to mend, not the one that calls for it."""
    broken = TWO_LINES.replace("of water", "{{ nothing_like_it }}")
    with pytest.raises(ProblemsFound) as found:
        _made(tmp_path, "heron-a", broken, STEPS, GAS_ONLY, HOST)
    assert "content_blocks/own/two-lines.md:10:" in str(found.value)


def test_a_text_below_a_step_belongs_to_it() -> None:
    """Four spaces make it the step's own paragraph."""
    text = f"1. {CALLED}One\n{CONTINUED}\n{CONTINUED}more\n2. Two"
    assert indented(text) == "1. One\n\n    more\n2. Two"


def test_a_review_is_stale_when_a_called_sentence_changes(library: Library) -> None:
    """It stands on the page like any other; that it is in another file is no matter."""
    blocks = {
        name: one for name, one in library.blocks.items() if "pump-off" in one.calls
    }
    assert blocks
    now = with_sentences(blocks, {"pump-off": Worded("Now.", Place("x"))})
    then = with_sentences(blocks, {"pump-off": Worded("Then.", Place("x"))})
    assert all(now[name].wording != then[name].wording for name in blocks)


def test_a_workspace_takes_no_built_in_name(tmp_path: Path) -> None:
    """A line with the name of another would change texts that nobody looked at."""
    folder = tmp_path / "content_blocks"
    folder.mkdir()
    (folder / "shared.yml").write_text("pump-off: Turn it off.\n", "utf-8")
    with pytest.raises(ProblemsFound) as found:
        read_library([BUILT_IN, folder], tmp_path)
    assert "'pump-off' is a built-in sentence" in str(found.value)
