"""Leafmould: a gardener's notes become a linked site that remembers, reckons and plans."""

__version__ = "0.1.0"
