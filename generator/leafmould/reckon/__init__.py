"""Computation: pure, no files, no clock. `on` is always an argument."""
