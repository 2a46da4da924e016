"""A JSON Schema for each table that is given as JSON, made from its columns: what each means, and what may stand in it.

The files with a contract of their own (plantings, harvests, problems) have theirs in `output/schemas/`.
"""

from __future__ import annotations

import json
from collections.abc import Iterable

from leafmould.report import JSON_VERSION

ENDING = ".schema.json"
NUMBERS = frozenset({"area m2", "age", "left", "low", "high", "rain"})
WHOLE_NUMBERS = frozenset({"year"})
YES_OR_NO = frozenset({"killed by frost"})
DAYS = frozenset({"from", "until"})
"""Columns of exact days; in all others a day may be as coarse as it was written."""
DAILY = "weather"
"""The table in which every row is a day."""


def table_schema(name: str, about: str, columns: Iterable[tuple[str, str]]) -> bytes:
    """The schema of one table, with its end of line."""
    held = {column: _cell(column, means, table=name) for column, means in columns}
    schema = {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": name.capitalize(),
        "description": f"{about.capitalize()}. Keys are never renamed; what is not known is null or empty.",
        "type": "object",
        "required": ["version", "on", name],
        "properties": {
            "version": {"const": JSON_VERSION},
            "on": {
                "type": "string",
                "format": "date",
                "description": "The day everything is reckoned for.",
            },
            name: {
                "type": "array",
                "items": {"type": "object", "required": list(held), "properties": held},
            },
        },
    }
    return f"{json.dumps(schema, ensure_ascii=False, indent=2)}\n".encode()


def _cell(column: str, means: str, *, table: str) -> dict[str, object]:
    if column in NUMBERS:
        return {"type": ["number", "null"], "description": means}
    if column in WHOLE_NUMBERS:
        return {"type": ["integer", "null"], "description": means}
    if column in YES_OR_NO:
        return {"type": ["boolean", "null"], "description": means}
    if table == DAILY or (column in DAYS and table == "beds"):
        return {"type": ["string", "null"], "format": "date", "description": means}
    return {"type": ["string", "null"], "description": means}
