"""Measures what all the tables of published facts cost to load, beside bare csv over the same files; prints, never judges.

How to run it, from the top of the repository, with the package installed:

    python tests/benchmarks/facts.py             # the best of seven processes each
    python tests/benchmarks/facts.py --times 20

Each figure is of processor time in a process of its own, the modules imported before the clock starts and Python
not looking for values that have gone, as in a build. The aim is 30 ms for the whole.
"""

from __future__ import annotations

import argparse
import subprocess
import sys

OURS = """
import gc, time
from leafmould.facts import cautions, common_practice, manure, published, tables, usual_starts
gc.disable()
begun = time.process_time()
tables.crops(), tables.cultivars(), tables.families(), tables.sources(), tables.crop_by_name("pea")
tables.days_facts("pea"), tables.variety_days("pea", "Meteor"), tables.usual_days("pea")
published.published("pea"), published.rotation_facts(), cautions.cautions("pea"), manure.days_after_manure("pea")
common_practice.common_practice(), usual_starts.usual_start(tables.crops()["pea"], "in autumn")
print(time.process_time() - begun)
"""
BARE = """
import csv, gc, time
from leafmould.facts.tables import DATA
gc.disable()
begun = time.process_time()
for path in sorted(DATA.rglob("*.csv")):
    for row in csv.reader(path.read_text(encoding="utf-8").splitlines()):
        pass
print(time.process_time() - begun)
"""


def best(program: str, times: int) -> float:
    """Milliseconds of the cheapest of so many processes."""
    command = [sys.executable, "-c", program]
    runs = (subprocess.run(command, check=True, capture_output=True, text=True) for _ in range(times))
    return min(float(run.stdout) for run in runs) * 1000


def main() -> None:
    """Read the command line, measure, print."""
    parser = argparse.ArgumentParser(description="Measure the loading of the published facts.")
    parser.add_argument("--times", type=int, default=7, help="the best of so many processes")
    times = parser.parse_args().times
    ours, bare = best(OURS, times), best(BARE, times)
    sys.stdout.write(f"facts: {ours:.1f} ms, bare csv of the same files {bare:.1f} ms, {ours / bare:.1f} x\n")


if __name__ == "__main__":
    main()
