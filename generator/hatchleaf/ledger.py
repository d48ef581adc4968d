"""
The ledger of printed addresses: one immutable file per event, the state folded.

A sticker outlives the files it was made from.  What was printed is therefore never
rewritten: each event is a file named by the digest of its bytes, and names the
newest events its writer knew, so that two people may print on two branches.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterable, Mapping
from dataclasses import asdict, dataclass, replace
from datetime import date
from functools import cached_property
from types import MappingProxyType
from typing import Annotated, ClassVar, Final, Literal, TypeAlias

from pydantic import ConfigDict, Field, TypeAdapter, ValidationError

DIGEST_LENGTH: Final = 24
"""Hexadecimal digits of SHA-256 in a file's name: 96 bits."""

Number: TypeAlias = Annotated[int, Field(ge=0, le=999)]
Digest: TypeAlias = Annotated[str, Field(pattern=rf"^[0-9a-f]{{{DIGEST_LENGTH}}}$")]


class _Exact:
    """What is read with all its fields, and no other."""

    __pydantic_config__: ClassVar[ConfigDict] = ConfigDict(extra="forbid")


@dataclass(frozen=True)
class PrintedLabel(_Exact):
    """
    One sticker: what it says and where it goes.

    ``matrix`` and ``text`` are SHA-256 digests of the symbol and of the label's words;
    ``sheet`` and ``spot`` count from 1, along the rows.
    """

    topic: Number
    place: str
    payload: str
    version: Annotated[int, Field(ge=1, le=40)]
    ecc: Literal["L", "M", "Q", "H"]
    mask: Annotated[int, Field(ge=0, le=7)]
    matrix: str
    text: str
    sheet: Annotated[int, Field(ge=1)]
    spot: Annotated[int, Field(ge=1)]


@dataclass(frozen=True)
class Printed(_Exact):
    """A set of stickers left the press; the module's size is in micrometers."""

    host: str
    preset: str
    module_um: int
    edition: str
    card: str
    labels: tuple[PrintedLabel, ...]
    kind: Literal["printed"] = "printed"


@dataclass(frozen=True)
class Moved(_Exact):
    """A topic's page has gone to another number, whole."""

    topic: Number
    to: Number
    kind: Literal["moved"] = "moved"


@dataclass(frozen=True)
class Merged(_Exact):
    """A topic's page has become a part of another one."""

    topic: Number
    to: Number
    kind: Literal["merged"] = "merged"


@dataclass(frozen=True)
class Retired(_Exact):
    """What the topic speaks of has left the unit, or the sticker was a mistake."""

    topic: Number
    why: str
    kind: Literal["retired"] = "retired"


@dataclass(frozen=True)
class HostChanged(_Exact):
    """New prints use another host; the old one must go on leading there."""

    old: str
    new: str
    kind: Literal["host_changed"] = "host_changed"


@dataclass(frozen=True)
class Scrapped(_Exact):
    """The unit is no more; its code is never used again."""

    why: str
    kind: Literal["scrapped"] = "scrapped"


@dataclass(frozen=True)
class Withdrawn(_Exact):
    """A printed set was destroyed before it was stuck on."""

    event: Digest
    why: str
    kind: Literal["withdrawn"] = "withdrawn"


Body: TypeAlias = Annotated[
    Printed | Moved | Merged | Retired | HostChanged | Scrapped | Withdrawn,
    Field(discriminator="kind"),
]


@dataclass(frozen=True)
class Event(_Exact):
    """One thing that happened to a unit's addresses, on a day."""

    code: Annotated[str, Field(pattern=r"^[1-9][0-9]{14}$")]
    on: date
    after: tuple[Digest, ...]
    body: Body
    format: Literal[1] = 1

    @cached_property
    def content(self) -> bytes:
        """
        Return the bytes of the file.

        Keys are sorted, and there is no line feed, which version control might
        turn into another one and so change the digest.
        """
        data = asdict(self) | {"on": self.on.isoformat()}
        return json.dumps(
            data, ensure_ascii=False, sort_keys=True, separators=(",", ":")
        ).encode()

    @cached_property
    def digest(self) -> str:
        """Return the name by which later events know this one."""
        return digest_of(self.content)

    @property
    def file_name(self) -> str:
        """Return the name of the event's file."""
        return f"{self.on.isoformat()}-{self.digest}.json"


@dataclass(frozen=True)
class Address:
    """
    A topic number that events speak of, and what must stand behind it now.

    Without payloads no sticker carries it; it may still be where another one leads.
    """

    topic: int
    standing: Literal["live", "moved", "merged", "retired"] = "live"
    to: int | None = None
    payloads: frozenset[str] = frozenset()
    places: frozenset[str] = frozenset()


@dataclass(frozen=True)
class State:
    """What all events of a unit come to."""

    addresses: Mapping[int, Address]
    newest: Mapping[str, PrintedLabel]
    hosts: tuple[str, ...] = ()
    scrapped: bool = False
    heads: tuple[str, ...] = ()

    def leads_to(self, topic: int) -> int | None:
        """Return the topic that a printed number ends at, or None if at none."""
        seen: set[int] = set()
        while topic not in seen:
            seen.add(topic)
            address = self.addresses.get(topic)
            if address is None or address.standing == "live":
                return topic
            if address.to is None:
                return None
            topic = address.to
        return None


_EVENT: Final = TypeAdapter(Event)


def digest_of(content: bytes) -> str:
    """Return the digest by which a file with that content is named."""
    return hashlib.sha256(content).hexdigest()[:DIGEST_LENGTH]


def parse(content: bytes) -> Event:
    """
    Return the event in a file's bytes.

    Raises:
        ValueError: if they are not an event, or not written as this module writes it
    """
    try:
        event = _EVENT.validate_json(content, strict=True)
    except ValidationError as error:
        first = error.errors()[0]
        where = ".".join(str(part) for part in first["loc"])
        raise ValueError(f"{where or 'content'}: {first['msg']}") from error
    if event.content != content:
        raise ValueError("content: not in the one way of writing an event")
    return event


def in_order(events: Iterable[Event]) -> tuple[Event, ...]:
    """Return the events, parents first; those side by side by day, then digest."""
    waiting = {event.digest: event for event in events}
    done: dict[str, Event] = {}
    while waiting:
        ready = [e for e in waiting.values() if not waiting.keys() & set(e.after)]
        following = min(ready, key=lambda e: (e.on, e.digest))
        done[following.digest] = waiting.pop(following.digest)
    return tuple(done.values())


def fold(events: Iterable[Event]) -> State:
    """
    Return the state that the events come to, in whatever order they are given.

    A number that was printed stays an address for ever, unless every set that
    carried it was withdrawn before it was stuck on.
    """
    ordered = in_order(events)
    withdrawn = {e.body.event for e in ordered if isinstance(e.body, Withdrawn)}
    addresses: dict[int, Address] = {}
    newest: dict[str, PrintedLabel] = {}
    hosts: list[str] = []
    scrapped = False
    for event in ordered:
        match event.body:
            case Printed(labels=labels, host=host):
                # A symbol printed once is kept even if that sheet was withdrawn.
                newest.update({label.payload: label for label in labels})
                if event.digest not in withdrawn:
                    hosts.append(host)
                    for label in labels:
                        addresses[label.topic] = _printed(addresses, label)
            case Moved(topic=topic, kind=kind) | Merged(topic=topic, kind=kind):
                addresses[topic] = _led(addresses, topic, kind, event.body.to)
            case Retired(topic=topic, kind=kind):
                addresses[topic] = _led(addresses, topic, kind, None)
            case HostChanged(new=new):
                hosts.append(new)
            case Scrapped():
                scrapped = True
    known = {parent for event in ordered for parent in event.after}
    return State(
        addresses=MappingProxyType(dict(sorted(addresses.items()))),
        newest=MappingProxyType(newest),
        hosts=tuple(dict.fromkeys(reversed(hosts))),
        scrapped=scrapped,
        heads=tuple(sorted(e.digest for e in ordered if e.digest not in known)),
    )


def _printed(addresses: Mapping[int, Address], label: PrintedLabel) -> Address:
    """Return the address once more in use, with the label's payload and place."""
    before = addresses.get(label.topic, Address(label.topic))
    return replace(
        before,
        standing="live",
        to=None,
        payloads=before.payloads | {label.payload},
        places=before.places | {label.place},
    )


def _led(
    addresses: Mapping[int, Address],
    topic: int,
    standing: Literal["moved", "merged", "retired"],
    to: int | None,
) -> Address:
    """Return the address led elsewhere; its printed payloads stay what they are."""
    before = addresses.get(topic, Address(topic))
    return replace(before, standing=standing, to=to)
