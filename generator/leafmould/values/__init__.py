"""Plain values every stage shares: places in files, problems, dates, amounts, names."""
