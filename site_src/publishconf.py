"""The same settings for a site that is put on the web: absolute addresses are taken from club.yaml."""

import sys
from pathlib import Path

sys.path.append(str(Path(__file__).resolve().parent))

from pelicanconf import *

DELETE_OUTPUT_DIRECTORY = True
