"""The generator: words and data in, a finished handbook out."""
