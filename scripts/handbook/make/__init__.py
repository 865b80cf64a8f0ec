"""Blocks, pages and the search's index as they stand in the finished book. No page is judged here."""
