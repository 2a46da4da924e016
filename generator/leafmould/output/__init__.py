"""Text and bytes to files."""
