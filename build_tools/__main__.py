"""The handbook's command: `python3 -m build_tools` or `python3 path/to/build_tools`.

This file must be understood by any Python 3, so that an old one can say what it lacks.
"""

import os
import sys

if sys.version_info < (3, 7):
    sys.exit("Python 3.7 or newer must start this: try python3.13 in the place of python3.")

# Run by its folder's path, Python looks for modules in that folder; they are all named from the
# folder above it.
if not __package__:
    sys.path[0] = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))

from build_tools.set_up.start import start

if __name__ == "__main__":
    sys.exit(start(sys.argv[1:]))
