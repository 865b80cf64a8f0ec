"""An answer as HTML, as a drawing, as text: the same bytes when the page is built and when it is live."""
