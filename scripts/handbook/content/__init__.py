"""The pages as people write them: heads, prose, blocks, addresses, and the place of each. Nothing here judges or prints."""
