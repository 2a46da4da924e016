"""Numbers and days to shapes; knows no garden words."""
