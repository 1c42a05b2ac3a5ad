### What stands in no page of the site: the status file for other sites, the pages behind short addresses.

# Once the day of the last morning entry is over. $course as the club types it; $moment with its year; $sentence: how the
# course was then.
status-file-once-over = { status-not-entered-today } This was true at { $moment }: { $sentence }

# Leads from a short address to its notice
short-page-notice = Read the whole notice
