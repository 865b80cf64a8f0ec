"""Lidbook's calculators: pure Python, standard library only, the same answer in every engine."""
