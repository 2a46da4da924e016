"""The pictures of the example garden, as drawings: paper, washes, ink, and what is drawn with them."""
