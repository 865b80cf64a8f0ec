"""Boards over a ceiling: courses, the search for the fewest sheets, its bound, the plan to hang from."""
