"""Tiles and panels that cover a ceiling. Boards have a folder of their own."""
