"""Writing notes and starting gardens."""
