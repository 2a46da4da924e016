"""Looking back from the terminal."""
