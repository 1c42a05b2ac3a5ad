"""From the manager's answers to a log entry that is not written yet, and what it will change. Pure."""
