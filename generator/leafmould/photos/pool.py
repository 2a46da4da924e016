"""Runs jobs in processes, all cores at once, and gives their outcomes in the order of the jobs.

A few pictures are made here, without starting processes; so are all of them where processes cannot be had.
"""

from __future__ import annotations

import os
from collections.abc import Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from multiprocessing import get_context

from leafmould.photos.resize import Job, Outcome, shrink

WORTH_IT = 8
"""From so many pictures on, the start of processes pays."""


def outcomes(jobs: Sequence[Job], workers: int | None) -> Iterator[Outcome]:
    """What became of each job, in order; the same for any number of workers.

    Args:
        workers: how many processes may be at work; None for one a core.
    """
    workers = workers or cores()
    if workers < 2 or len(jobs) < WORTH_IT:
        yield from map(shrink, jobs)
        return
    done = 0
    try:
        for outcome in _in_processes(jobs, min(workers, len(jobs))):
            done += 1
            yield outcome
    except (BrokenProcessPool, OSError, NotImplementedError):
        yield from map(shrink, jobs[done:])


def cores() -> int:
    """How many processes can work at once."""
    if hasattr(os, "sched_getaffinity"):
        return len(os.sched_getaffinity(0))
    return os.cpu_count() or 1


def _in_processes(jobs: Sequence[Job], workers: int) -> Iterator[Outcome]:
    """The same in processes started anew: copying ours would be unsafe while a preview serves pages."""
    pool = ProcessPoolExecutor(workers, mp_context=get_context("spawn"))
    try:
        yield from pool.map(shrink, jobs)
    finally:
        pool.shutdown(cancel_futures=True)
