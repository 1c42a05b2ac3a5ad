"""Pictures as SVG: numbers, days and words come in from `notices`, shapes on a page go out."""
