"""Records and turf science -> how each surface and the course stand at a moment, with reasons."""
