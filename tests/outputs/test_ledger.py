"""The ledger: events are kept as they were, merge without conflict, and add up."""

from __future__ import annotations

import hashlib
import itertools
import json
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hatchleaf.ledger import (
    Body,
    Event,
    HostChanged,
    Merged,
    Moved,
    Printed,
    PrintedLabel,
    Retired,
    Scrapped,
    Withdrawn,
    fold,
    in_order,
    parse,
)
from hatchleaf.ledger_files import read, verify, write
from hatchleaf.problems import ProblemsFound

CODE = "839201743651830"
DAY = date(2027, 4, 16)


def label(topic: int, host: str = "manuals.example") -> PrintedLabel:
    """Return a printed label of a topic."""
    return PrintedLabel(
        topic=topic,
        place=f"place-{topic}",
        payload=f"https://{host}/{CODE}/{topic:03d}/",
        version=4,
        ecc="Q",
        mask=5,
        matrix="m" * 64,
        text="t" * 64,
        sheet=1,
        spot=1,
    )


def printed(*topics: int, host: str = "manuals.example") -> Printed:
    """Return a print of some topics."""
    return Printed(
        host=host,
        preset="letter-3x7",
        module_um=900,
        edition="2027-04-16",
        card="c" * 64,
        labels=tuple(label(topic, host) for topic in topics),
    )


def event(body: Body, *after: Event, on: date = DAY) -> Event:
    """Return an event that knows some others."""
    return Event(CODE, on, tuple(sorted(e.digest for e in after)), body)


def folder_of(tmp_path: Path) -> Path:
    """Return the unit's folder in a workspace."""
    return tmp_path / "unit_specs" / "printed" / CODE


def test_a_file_is_named_by_its_content_and_reads_back(tmp_path: Path) -> None:
    """Whoever has the file can check it with sha256sum alone."""
    first = event(printed(110, 210))
    path = write(folder_of(tmp_path), first)
    content = path.read_bytes()
    digest = hashlib.sha256(content).hexdigest()[:24]
    assert path.name == f"2027-04-16-{digest}.json"
    assert parse(content) == first
    assert read(folder_of(tmp_path), tmp_path) == (first,)
    assert b"\n" not in content  # nothing for version control to convert
    data = json.loads(content)
    assert (
        content
        == json.dumps(
            data, sort_keys=True, separators=(",", ":"), ensure_ascii=False
        ).encode()
    )


def test_every_kind_of_event_survives_writing_and_reading(tmp_path: Path) -> None:
    """A kind that could not be read back would lock the unit's ledger for ever."""
    first = event(printed(110))
    bodies: tuple[Body, ...] = (
        Moved(110, 115),
        Merged(110, 130),
        Retired(110, "no longer fitted"),
        HostChanged("manuals.example", "m.example"),
        Scrapped("burned out"),
        Withdrawn(first.digest, "wrong paper"),
    )
    events = (first, *(event(body, first) for body in bodies))
    for one in events:
        write(folder_of(tmp_path), one)
    assert set(read(folder_of(tmp_path), tmp_path)) == set(events)


def test_nothing_printed_yet_is_an_empty_ledger(tmp_path: Path) -> None:
    """The first print of a unit finds no folder."""
    assert read(folder_of(tmp_path), tmp_path) == ()
    assert fold(()).heads == ()


def test_two_printers_merge_without_conflict(tmp_path: Path) -> None:
    """Two people print on two branches; the merged folder holds both and goes on."""
    root = event(printed(110))
    one = event(printed(210), root)
    two = event(printed(310), root)
    ours, theirs = tmp_path / "ours", tmp_path / "theirs"
    for tree, own in ((ours, one), (theirs, two)):
        write(folder_of(tree), root)
        write(folder_of(tree), own)
    for path in folder_of(theirs).iterdir():  # what merging the branches does
        (folder_of(ours) / path.name).write_bytes(path.read_bytes())
    events = read(folder_of(ours), ours)
    assert set(events) == {root, one, two}
    state = fold(events)
    assert set(state.addresses) == {110, 210, 310}
    assert state.heads == tuple(sorted((one.digest, two.digest)))
    after = event(printed(410), one, two)
    assert fold([*events, after]).heads == (after.digest,)


def chain() -> tuple[Event, ...]:
    """Return a history with a branch in it."""
    a = event(printed(110, 210, 310))
    b = event(Moved(210, 215), a)
    c = event(Merged(310, 320), a, on=date(2027, 5, 1))
    d = event(printed(210), b, on=date(2027, 3, 1))  # a clock that went backwards
    e = event(Retired(110, "no gas any more"), c, d)
    return a, b, c, d, e


def test_the_state_does_not_depend_on_the_order_of_reading() -> None:
    """Folders list their files in any order."""
    states = [fold(order) for order in itertools.permutations(chain())]
    assert all(state == states[0] for state in states)


def test_what_came_after_counts_even_with_an_earlier_date() -> None:
    """The links between events decide, not a computer's clock."""
    a, b, c, d, e = chain()
    order = in_order((e, d, c, b, a))
    assert order.index(a) < order.index(b) < order.index(d) < order.index(e)
    state = fold((a, b, c, d, e))
    assert state.addresses[210].standing == "live"
    assert state.addresses[110].standing == "retired"
    assert state.leads_to(310) == 320
    assert state.leads_to(110) is None


@given(
    st.lists(
        st.tuples(
            st.sampled_from(("moved", "merged")), st.integers(0, 4), st.integers(0, 4)
        ),
        max_size=8,
    )
)
def test_any_chain_of_moves_ends(moves: list[tuple[str, int, int]]) -> None:
    """Numbers led in a circle must not hang a build."""
    events = [event(printed(0, 1, 2, 3, 4))]
    for kind, topic, to in moves:
        body: Body = Moved(topic, to) if kind == "moved" else Merged(topic, to)
        events.append(event(body, events[-1]))
    state = fold(events)
    for topic in range(5):
        end = state.leads_to(topic)
        assert end is None or state.addresses[end].standing == "live"


def test_a_number_stays_an_address_through_all_that_happens() -> None:
    """A sticker cannot be called back: whatever was printed is still listed."""
    first = event(printed(110, 210))
    events = [first]
    for body in (
        Moved(110, 120),
        Retired(210, "taken out"),
        HostChanged("manuals.example", "m.example"),
        Scrapped("sold for parts"),
    ):
        events.append(event(body, events[-1]))
    state = fold(events)
    assert state.addresses[110].payloads == {f"https://manuals.example/{CODE}/110/"}
    assert state.addresses[210].places == {"place-210"}
    assert state.scrapped
    assert state.hosts[0] == "m.example"
    assert "manuals.example" in state.hosts


def test_a_withdrawn_print_frees_its_numbers_but_not_its_symbols() -> None:
    """A sheet that was shredded binds nobody; printed again it looks the same."""
    first = event(printed(110))
    second = event(printed(210), first)
    gone = event(Withdrawn(second.digest, "shredded"), second)
    state = fold((first, second, gone))
    assert set(state.addresses) == {110}
    assert set(state.newest) == {
        f"https://manuals.example/{CODE}/110/",
        f"https://manuals.example/{CODE}/210/",
    }


def test_an_altered_file_is_found(tmp_path: Path) -> None:
    """One changed character anywhere in a file shows."""
    path = write(folder_of(tmp_path), event(printed(110)))
    content = path.read_bytes()
    for at in range(0, len(content), 7):
        path.write_bytes(content[:at] + bytes([content[at] ^ 1]) + content[at + 1 :])
        (problem,) = verify(folder_of(tmp_path), tmp_path)
        assert "altered" in problem.what
        assert problem.place.file == f"unit_specs/printed/{CODE}/{path.name}"
    with pytest.raises(ProblemsFound):
        read(folder_of(tmp_path), tmp_path)


def test_a_missing_parent_is_found(tmp_path: Path) -> None:
    """A removed older event leaves its name in the one that followed."""
    first = event(printed(110))
    write(folder_of(tmp_path), event(printed(210), first))
    (problem,) = verify(folder_of(tmp_path), tmp_path)
    assert problem.field == "after"
    assert first.digest in problem.what


def test_a_cut_off_newest_event_is_found_by_what_was_published(tmp_path: Path) -> None:
    """Nothing in the folder names the newest event; what was published does."""
    newest = event(printed(110))
    folder_of(tmp_path).mkdir(parents=True)
    assert verify(folder_of(tmp_path), tmp_path) == ()
    (problem,) = verify(folder_of(tmp_path), tmp_path, {newest.digest})
    assert newest.digest in problem.what
    write(folder_of(tmp_path), newest)
    assert verify(folder_of(tmp_path), tmp_path, {newest.digest}) == ()


def _named(content: bytes) -> str:
    """Return a right name for any content."""
    return f"2027-04-16-{hashlib.sha256(content).hexdigest()[:24]}.json"


@pytest.mark.parametrize(
    ("change", "says"),
    [
        ({"after": ["x"]}, "after.0"),
        ({"code": "12"}, "code"),
        ({"format": 2}, "format"),
        ({"more": 1}, "more"),
        ({"on": "16.4.2027"}, "on"),
        ({"body": {"kind": "eaten"}}, "body"),
        ({"body": {"kind": "moved", "topic": 1000, "to": 1}}, "topic"),
        ({"body": {"kind": "moved", "topic": "1", "to": 1}}, "topic"),
        ({"body": {"kind": "moved", "topic": 1}}, "to"),
        ({"on": "2027-04-17"}, "renamed"),
        ({"code": "939201743651830"}, "wrong folder"),
    ],
)
def test_a_file_that_is_no_event_of_the_unit_is_refused(
    change: dict[str, object], says: str, tmp_path: Path
) -> None:
    """A well-named file still has to be one of this unit's events, whole and exact."""
    data = json.loads(event(Moved(110, 120)).content) | change
    content = json.dumps(data, sort_keys=True, separators=(",", ":")).encode()
    folder = folder_of(tmp_path)
    folder.mkdir(parents=True)
    (folder / _named(content)).write_bytes(content)
    (problem,) = verify(folder, tmp_path)
    assert says in problem.what


def test_another_way_of_writing_the_same_event_is_refused(tmp_path: Path) -> None:
    """Else one event could have two names, and be there twice."""
    content = event(printed(110)).content + b" "
    folder = folder_of(tmp_path)
    folder.mkdir(parents=True)
    (folder / _named(content)).write_bytes(content)
    (problem,) = verify(folder, tmp_path)
    assert "one way of writing" in problem.what


def test_a_withdrawal_names_a_print(tmp_path: Path) -> None:
    """Withdrawing anything else would hide a mistake."""
    moved = event(Moved(110, 120))
    write(folder_of(tmp_path), moved)
    write(folder_of(tmp_path), event(Withdrawn(moved.digest, "no"), moved))
    (problem,) = verify(folder_of(tmp_path), tmp_path)
    assert problem.field == "body.event"


def test_a_file_by_another_name_is_found(tmp_path: Path) -> None:
    """A copy that a file manager renamed is no event."""
    path = write(folder_of(tmp_path), event(printed(110)))
    path.with_name("copy of event.json").write_bytes(path.read_bytes())
    (problem,) = verify(folder_of(tmp_path), tmp_path)
    assert "not a name of an event" in problem.what


def test_writing_leaves_nothing_else_behind(tmp_path: Path) -> None:
    """Only whole events stand in the folder, under their final names."""
    folder = folder_of(tmp_path)
    path = write(folder, event(printed(110)))
    assert list(folder.iterdir()) == [path]
    blocked = event(printed(210))
    (folder / blocked.file_name).mkdir()
    with pytest.raises(OSError, match="irectory"):
        write(folder, blocked)
    assert sorted(folder.iterdir()) == sorted([path, folder / blocked.file_name])


def test_the_same_set_printed_twice_makes_two_events() -> None:
    """Each print is on record, even two of the same sheet on one day."""
    first = event(printed(110))
    second = event(printed(110), first)
    assert first.digest != second.digest
    assert replace(second, after=()) == first
