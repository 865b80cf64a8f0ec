"""Exact numbers, measures and the words for them. Nothing here knows what is calculated."""
