"""The example garden's two sites, built once for all tests that look at them from outside."""

from __future__ import annotations

from pathlib import Path

import pytest

from sites import Book, example


@pytest.fixture(scope="session")
def public_folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return example(tmp_path_factory.mktemp("public"), household=False)


@pytest.fixture(scope="session")
def household_folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return example(tmp_path_factory.mktemp("household"), household=True)


@pytest.fixture(scope="session")
def public_book(public_folder: Path) -> Book:
    return Book(public_folder)


@pytest.fixture(scope="session")
def household_book(household_folder: Path) -> Book:
    return Book(household_folder)


@pytest.fixture(params=["public", "household"])
def book(request: pytest.FixtureRequest) -> Book:
    found: Book = request.getfixturevalue(f"{request.param}_book")
    return found
