"""A firm's own edition: what its `firm.yml` may say, what is wrong with it, and the book laid out by it. Nothing here calculates or draws."""
