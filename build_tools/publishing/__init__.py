"""What a published site needs beside its files: their hashes, and the settings of a server."""
