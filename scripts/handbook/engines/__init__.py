"""The calculators for a browser: lowered, and packed with both engines. Nothing here knows of pages."""
