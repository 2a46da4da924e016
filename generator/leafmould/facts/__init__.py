"""Published facts, as tables in which every row names its source."""
