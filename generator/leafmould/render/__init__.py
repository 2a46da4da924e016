"""Page values to HTML text."""
