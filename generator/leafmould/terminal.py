"""Words to the terminal, and the sign that work goes on. Knows no command and no garden."""

from __future__ import annotations

import sys
import threading
from collections.abc import Iterator, Mapping
from contextlib import contextmanager

import click


def say(text: str, *, err: bool = False) -> None:
    """Print a text; letters the terminal lacks become question marks, never a traceback."""
    stream = sys.stderr if err else sys.stdout
    if stream is None:
        return  # closed: nobody listens
    encoding = stream.encoding or "utf-8"
    click.echo(text.encode(encoding, "replace").decode(encoding), err=err)


def say_json(value: Mapping[str, object]) -> None:
    """Print an answer for other programs."""
    import json

    say(json.dumps(value, ensure_ascii=False, indent=2))


@contextmanager
def progress(doing: str) -> Iterator[None]:
    """Show a terminal that work goes on, once it has taken a second."""
    if sys.stderr is None or not sys.stderr.isatty():
        yield
        return
    done = threading.Event()
    waiter = threading.Thread(target=_turn, args=(doing, done), daemon=True)
    waiter.start()
    try:
        yield
    finally:
        done.set()
        waiter.join()


def _turn(doing: str, done: threading.Event) -> None:
    if done.wait(1.0):
        return
    from rich.console import Console

    with Console(stderr=True).status(f"{doing} …"):
        done.wait()
