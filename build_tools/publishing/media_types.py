"""The media types that files of a site are sent with, by the endings of their names."""

#: The one to send, then others that serve as well. With a wrong one browsers refuse scripts.
MEDIA_TYPES = {
    ".html": ("text/html",),
    ".css": ("text/css",),
    ".js": ("text/javascript", "application/javascript"),
    ".mjs": ("text/javascript", "application/javascript"),
    ".wasm": ("application/wasm",),
    ".json": ("application/json",),
    ".svg": ("image/svg+xml",),
    ".png": ("image/png",),
    ".webmanifest": ("application/manifest+json",),
}
