"""Text to entries: what was written, not yet what it means."""
