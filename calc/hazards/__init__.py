"""Asbestos samples and lead rules: what has to be settled before anything is touched."""
