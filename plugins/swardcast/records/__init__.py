"""What a club tells us: frozen records, no files, no clock; they translate themselves into turf values."""
