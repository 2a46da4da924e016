"""What gardeners call a plant family besides the names its table has; whoever looks back may ask by them."""

from __future__ import annotations

TRADE_WORDS = {
    "brassica": "Brassicaceae",
    "crucifer": "Brassicaceae",
    "allium": "Amaryllidaceae",
    "legume": "Fabaceae",
    "nightshade": "Solanaceae",
    "cucurbit": "Cucurbitaceae",
    "umbellifer": "Apiaceae",
    "chenopod": "Amaranthaceae",
}
"""What gardeners call a family besides its table names. Common practice, no source."""
