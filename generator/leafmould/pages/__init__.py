"""Garden and reckonings to page values: text, tables, links; no HTML."""
