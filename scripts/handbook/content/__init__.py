"""The pages as people write them: read into heads, prose and blocks, with the place of each. Nothing here judges or prints."""
