"""What a step may be: one thing to do, said with a verb that an owner knows."""

from __future__ import annotations

import re
from typing import Final

VERBS: Final = frozenset(
    # Two hundred words in quotes would hide what is missing.
    """
    add adjust aim air allow ask
    back bleed block blow boil bring brush burn buy
    call cap carry catch change charge check chock choose clean clear click clip close come
    compare connect control count couple cover crank cut
    decide delete dial disconnect do drain draw drive dry dump
    ease empty end enter erase extend
    face fasten feed feel fill find fit fix flush fold follow free
    gather get give go grease grip guide
    hand hang have head heat help hitch hold hook
    insert inspect
    join keep kneel knock know
    latch lay lead lean leave let level lie lift light line listen live load lock log look
    loosen lower lubricate
    make mark match measure meet melt mix mount move
    name note
    open
    pack pair peg park pick pin place plan plug point post pour practice press prop pull pump
    push put
    raise read record remove repeat replace report reset rest retract ring rinse roll rub
    run save say screw scrub seal see select send set shade shake share shout show shut sign
    sit slide slow smell soak spin spray spread squeeze stand start stay steady steer step stir
    stop store stow strap support sweep swing switch
    take talk tape tell test throw tie tighten tilt touch tow trace trail travel treat try
    trust tuck turn type
    uncouple undo unfold unhook unlatch unlock unpair unplug unroll unscrew untie unwind use
    wait wake walk warm warn wash watch weigh wet wind wipe work wrap write
    """.split()  # noqa: SIM905
)
"""Verbs that steps begin with; a new one is added here once it has been read aloud."""

_ALSO: Final = r"(?:please|always|only|just|first|next|now|then|at once|slowly|gently) "
_NOT: Final = re.compile(r"(?:do not|never|no one|nobody)\b", re.IGNORECASE)
_BEFORE: Final = re.compile(
    r"(?:if|now that|when|whenever|while|where|with|without|once|as soon as|as long as|after"
    r"|before|until|to|for|from|in|on|at|by|every|each|unless)\b[^:,]*(?:,[^,:]+)*?[,:] ",
    re.IGNORECASE,
)
_CASE: Final = re.compile(r"[^.!?]{1,80}?(?:: |\? )")
"""A case before a colon or a question: "Driving: stop off the road."."""


def words_of(text: str) -> str:
    """Return a step's words, without markup."""
    bare = re.sub(r"\[([^\]]*)\]\([^)]*\)", r"\1", re.sub(r"<[^>]+>", "", text))
    return bare.replace("**", "").strip()


def is_imperative(sentence: str) -> bool:
    """Return True for a sentence that tells someone to do, or not to do, one thing."""
    text = words_of(sentence)
    return any(_begins(start) for start in _starts(text))


def _starts(text: str) -> list[str]:
    found = [text]
    for pattern in (_BEFORE, _CASE):
        match = pattern.match(text)
        if match:
            found.append(text[match.end() :])
    # Commas within what goes before: any of them may end it.
    if re.match(_BEFORE, text):
        found += [text[m.end() :] for m in re.finditer(r"[,:] ", text)]
    return found


def _begins(text: str) -> bool:
    if _NOT.match(text):
        return True
    bare = re.sub(rf"^(?:{_ALSO})+", "", text, flags=re.IGNORECASE)
    first = re.match(r"[A-Za-z]+", bare)
    return first is not None and first[0].casefold() in VERBS


def actions(step: str) -> int:
    """
    Return how many things one sentence of *step* tells to do, at most.

    A joint is a semicolon, "and" or "then".  A second sentence that only says what to
    do in a case, or what to keep from doing, is no further action; one that tells to
    do something else is.
    """
    first, *rest = re.split(r"(?<=[.!])\s+", words_of(step))
    told = [_acts(piece) for piece in _JOINT.split(first)[1:]]
    more = [_acts(sentence) for sentence in rest]
    return 1 + sum(told) + sum(more)


_JOINT: Final = re.compile(r";\s+|,? and(?: then)?\s+|,? then\s+")
_NOUNS: Final = frozenset({"back", "light", "line", "pin", "rest", "stop", "watch"})
"""Words that are verbs as well, but after "and" mostly things; and what is a caution."""


def _acts(piece: str) -> bool:
    first = re.match(r"[A-Za-z]+", piece)
    return first is not None and first[0].casefold() in VERBS - _NOUNS
