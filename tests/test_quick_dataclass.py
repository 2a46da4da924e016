"""The quick dataclasses beside the standard library's own: the same but for what the type checker has held already."""

import dataclasses
import pickle

import pytest

from leafmould.values.quick_dataclass import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Picked:
    """As most of ours are made."""

    crop: str
    grams: int = 0
    mark: str = dataclasses.field(default="", compare=False)


@dataclass(frozen=True, slots=True, kw_only=True)
class Alone:
    """Of one field."""

    crop: str


@dataclass(slots=True)
class Open:
    """One that is filled bit by bit."""

    crop: str
    lines: list[str] = dataclasses.field(default_factory=list)


def theirs(ours: type, **how: bool) -> type:
    """The same class as the standard library makes it."""
    body = {"__annotations__": ours.__annotations__, "__qualname__": ours.__qualname__}
    body |= {f.name: f.default for f in dataclasses.fields(ours) if f.default is not dataclasses.MISSING}
    return dataclasses.dataclass(**how)(type(ours.__name__, (), body))


def test_values_are_shown_as_the_standard_library_shows_them() -> None:
    own = theirs(Picked, frozen=True, kw_only=True)
    assert repr(Picked(crop="pea", grams=20)) == "Picked(crop='pea', grams=20, mark='')"
    assert repr(Picked(crop="pea")) == repr(own(crop="pea"))


def test_values_are_equal_by_the_fields_that_are_compared() -> None:
    assert Picked(crop="pea", grams=20, mark="a") == Picked(crop="pea", grams=20, mark="b")
    assert Picked(crop="pea", grams=20) != Picked(crop="pea", grams=21)
    assert Alone(crop="pea") == Alone(crop="pea")
    assert Alone(crop="pea") != Alone(crop="bean")
    assert Alone(crop="pea") != Open("pea")


def test_equal_values_have_equal_hashes_as_the_standard_library_makes_them() -> None:
    own = theirs(Alone, frozen=True, kw_only=True)
    assert {Picked(crop="pea", mark="a"), Picked(crop="pea", mark="b"), Picked(crop="bean")} == {
        Picked(crop="pea"),
        Picked(crop="bean"),
    }
    assert hash(Alone(crop="pea")) == hash(own(crop="pea"))


def test_what_is_filled_bit_by_bit_has_no_hash() -> None:
    with pytest.raises(TypeError, match="unhashable type: 'Open'"):
        hash(Open("pea"))
    assert Open("pea").lines is not Open("pea").lines


def test_no_field_is_made_up_and_none_left_out() -> None:
    nothing: dict[str, str] = {}
    with pytest.raises(TypeError, match="missing 1 required keyword-only argument: 'crop'"):
        Picked(**nothing)
    assert not hasattr(Picked(crop="pea"), "__dict__")


def test_values_can_be_copied_changed_and_sent_to_another_process() -> None:
    picked = Picked(crop="pea", grams=20, mark="a")
    assert dataclasses.replace(picked, grams=30) == Picked(crop="pea", grams=30)
    assert pickle.loads(pickle.dumps(picked)) == picked
    assert [f.name for f in dataclasses.fields(Picked)] == ["crop", "grams", "mark"]
