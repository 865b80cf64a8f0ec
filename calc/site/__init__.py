"""The site as it stands: areas, what is fixed to the ceiling, and what brings a person up to it."""
