"""Few files for pages in place of many: the sources stay small, and esbuild joins them."""
