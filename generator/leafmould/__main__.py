"""Runs the commands as `python -m leafmould`."""

from leafmould.cli import main

main(prog_name="leafmould")
