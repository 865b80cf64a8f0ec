"""What the book stands on, as data: sources, limits by place, cautions. Nothing here calculates."""
