"""What all tests share: the same random choices every time, and no skip counted as done."""

from __future__ import annotations

import os

import pytest
from hypothesis import HealthCheck, settings

from long_runs import LONG

settings.register_profile(
    "leafmould",
    derandomize=True,  # the same examples on every machine
    deadline=None,  # speed is measured in benchmarks, never judged in tests
    database=None,
    max_examples=100 * LONG,
    suppress_health_check=[HealthCheck.too_slow],
)
settings.load_profile("leafmould")


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    """Name what was skipped, so that a missing tool is seen."""
    for report in terminalreporter.stats.get("skipped", []):
        terminalreporter.write_line(f"skipped: {report.nodeid}")


@pytest.hookimpl(trylast=True)
def pytest_sessionfinish(session: pytest.Session, exitstatus: int) -> None:
    """Where skips are forbidden, one is a failure."""
    reporter = session.config.pluginmanager.get_plugin("terminalreporter")
    skipped = reporter.stats.get("skipped", []) if reporter else []
    if os.environ.get("LEAFMOULD_NO_SKIPS") and skipped and exitstatus == 0:
        session.exitstatus = pytest.ExitCode.TESTS_FAILED
