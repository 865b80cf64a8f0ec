"""Drawings that no calculator makes. What a calculator draws lives with it in `calc`."""
