"""A built site read back before it goes live: whatever is wrong with it is found here, and the last good site stays."""
