"""What a page and the whole book must hold to. Nothing here changes a page; a fault is told with its place."""
