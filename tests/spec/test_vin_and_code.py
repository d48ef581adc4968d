"""Check digits, held against published examples."""

from __future__ import annotations

import random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hatchleaf.spec import code, vin

DIGITS = st.text("0123456789", min_size=1, max_size=20)


@pytest.mark.parametrize(
    ("number", "digit"),
    [
        # The example of 49 CFR 565's calculation that the trade quotes: sum 351.
        ("1M8GDM9AXKP042788", "X"),
        # The test number for VIN readers: sum 89, which leaves 1 by 11.
        ("11111111111111111", "1"),
    ],
)
def test_published_vins(number: str, digit: str) -> None:
    """Both are printed in public explanations of the calculation."""
    assert vin.check_digit(number) == digit == number[8]


@given(st.sampled_from("0123456789ABCDEFGHJKLMNPRSTUVWXYZ"))
def test_one_character_repeated_is_no_vin(letter: str) -> None:
    """The weights of 49 CFR 565 add up to 89, or 1 by 11: a digit repeated passes."""
    number = letter * 17
    assert vin.all_one_character(number)
    if letter.isdigit():
        assert vin.check_digit_is_right(number)


@given(
    st.text("0123456789ABCDEFGHJKLMNPRSTUVWXYZ", min_size=17, max_size=17),
    st.integers(0, 16),
    st.sampled_from("0123456789"),
)
def test_a_wrong_digit_is_found(number: str, at: int, digit: str) -> None:
    """Weights and 11 have no common factor, so one wrong digit always shows."""
    sound = number[:8] + vin.check_digit(number) + number[9:]
    slip = sound[:at] + digit + sound[at + 1 :]
    if sound[at].isdigit() and sound[at] != digit:
        assert not vin.check_digit_is_right(slip)


@pytest.mark.parametrize(
    ("letter", "years"),
    # 49 CFR 565.15, table VII: A 1980, Y 2000, 1 2001, 9 2009, and again after 30.
    [("A", 1980), ("V", 2027), ("Y", 2030), ("1", 2001), ("9", 2009), ("W", 2028)],
)
def test_published_years(letter: str, years: int) -> None:
    """The tenth character names the model year."""
    assert years in vin.model_years("7ZZTB2420" + letter + "1000173")


@pytest.mark.parametrize("letter", "UZ0")
def test_no_year(letter: str) -> None:
    """The table leaves out U, Z and 0 besides I, O and Q."""
    assert vin.model_years("7ZZTB2420" + letter + "1000173") == ()


def test_published_code() -> None:
    """572 gets 4: the worked example of Damm's scheme on its encyclopedia page."""
    assert code.check_digit("572") == "4"


def test_table_is_what_the_scheme_asks_for() -> None:
    """
    Held against the definition: weakly totally anti-symmetric, a diagonal of zeros.

    H. M. Damm, Total anti-symmetrische Quasigruppen, Marburg 2004: where the table
    gives (c * x) * y = (c * y) * x, x is y; and x * x = 0.
    """
    table = [[int(digit) for digit in row] for row in code.TABLE]
    digits = range(10)
    assert all(sorted(row) == list(digits) for row in table)
    assert all(sorted(column) == list(digits) for column in zip(*table, strict=True))
    assert all(table[d][d] == 0 for d in digits)
    for c in digits:
        for x in digits:
            for y in range(x):
                assert table[table[c][x]][y] != table[table[c][y]][x]


@given(DIGITS, st.data())
def test_slips_are_found(digits: str, data: st.DataObject) -> None:
    """One wrong digit and one swap of neighbors are what a typist does."""
    sound = digits + code.check_digit(digits)
    at = data.draw(st.integers(0, len(sound) - 2))
    wrong = sound[:at] + str((int(sound[at]) + 1) % 10) + sound[at + 1 :]
    assert code.check_digit(wrong[:-1]) != wrong[-1]
    swapped = sound[:at] + sound[at + 1] + sound[at] + sound[at + 2 :]
    assert swapped == sound or code.check_digit(swapped[:-1]) != swapped[-1]


@given(st.integers())
def test_new_codes_are_valid(seed: int) -> None:
    """The first digit is not 0, so a code never looks shorter than it is."""
    made = code.new(random.Random(seed))  # noqa: S311
    assert code.valid(made)
    assert len(made) == code.DIGITS
    assert made[0] != "0"
