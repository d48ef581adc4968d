"""Rules on the places of a unit: each that is used exists, and each is one place."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from hatchleaf.problems import Problem, listed, suggestion
from hatchleaf.spec import paths
from hatchleaf.spec.checked import Checked
from hatchleaf.spec.model.fields import Part
from hatchleaf.spec.model.outside import PoweredAwning
from hatchleaf.spec.model.readings import Reading
from hatchleaf.spec.model.unit import PlaceOnUnit
from hatchleaf.spec.model.water import TankHeater
from hatchleaf.spec.told import quoted
from hatchleaf.spec.tree import without_items
from hatchleaf.units import number_in

_NO_PLACES: Final = ("none", "unknown")
_WHOLE: Final = 100.0
_HALF: Final = 50.0


def places_exist(unit: Checked) -> Iterator[Problem]:
    """Yield the fields that name a place which is not listed."""
    listing = unit.tree.fields.get("places")
    if listing is None or not listing.items:
        return
    known = [item.id for item in listing.items if item.id not in (None, *_NO_PLACES)]
    ids = [str(name) for name in known]
    for path, node in unit.tree.walk():
        form = paths.fields().get(without_items(path))
        if not form or form.form != "place" or not node.text or node.text in ids:
            continue
        if node.text in form.words:
            continue
        what = f"no place has the id {quoted(node.text)}"
        hint = suggestion(node.text, ids) or "add it under places"
        yield Problem(node.place, path, what, listed(ids), hint)


def place_ids(unit: Checked) -> Iterator[Problem]:
    """Yield the places whose id would be read as a word."""
    for place in _places(unit):
        if place.id in _NO_PLACES:
            what = f"a place cannot have the id '{place.id}'"
            yield unit.problem(f"places[{place.id}].id", what)


def places_are_told_apart(unit: Checked) -> Iterator[Problem]:
    """Yield places that cannot be told from another, or lie off the unit."""
    names: dict[str, str] = {}
    for place in _places(unit):
        path = f"places[{place.id}]"
        name = place.name.casefold()
        if name in names:
            what = f"two places are called '{place.name}'"
            hint = f"the other is {names[name]}"
            yield unit.problem(f"{path}.name", what, hint=hint)
        names.setdefault(name, place.id)
        if place.from_front.quantity is None:
            continue
        share = number_in(place.from_front.quantity, "percent")
        if share > _WHOLE:
            what = f"'{share:g} %' is behind the rear end"
            yield unit.problem(f"{path}.from_front", what, "0 % to 100 %")
        elif (place.side == "front" and share > _HALF) or (
            place.side == "rear" and share < _HALF
        ):
            what = f"{share:g} % from the front is not the {place.side}"
            yield unit.problem(f"{path}.from_front", what)


def _places(unit: Checked) -> tuple[PlaceOnUnit, ...]:
    found: tuple[PlaceOnUnit, ...] = unit.values.get("places", ())
    return found


def places_of_what_is_there(unit: Checked) -> Iterator[Problem]:
    """Yield places of things not fitted, and fitted things without a place."""
    heater = unit.values.get("hot_water")
    if isinstance(heater, TankHeater):
        yield from _place_if(unit, "hot_water", heater, "element", "element_switch_at")
        yield from _place_if(unit, "hot_water", heater, "bypass", "bypass_at")
    awnings = unit.values.get("awnings")
    for awning in awnings if isinstance(awnings, tuple) else ():
        if isinstance(awning, PoweredAwning):
            path = f"awnings[{awning.id}]"
            yield from _place_if(unit, path, awning, "override", "override_at")


def _place_if(
    unit: Checked, path: str, part: Part, field: str, place: str
) -> Iterator[Problem]:
    fitted = getattr(part, field)
    named = getattr(part, place) != "none"
    if fitted == "none" and named:
        what = f"there is no place of what is not fitted ({field} is none)"
        yield unit.problem(f"{path}.{place}", what, "none")
    elif fitted not in ("none", "unknown", Reading(None)) and not named:
        what = f"{field} is fitted, so it has a place"
        yield unit.problem(f"{path}.{place}", what, "an id listed under places")


RULES: Final = (
    places_exist,
    place_ids,
    places_are_told_apart,
    places_of_what_is_there,
)
