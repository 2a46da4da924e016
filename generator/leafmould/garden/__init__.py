"""Entries to garden: what the notes mean."""
