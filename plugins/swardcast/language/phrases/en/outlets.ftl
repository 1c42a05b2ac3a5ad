### What stands in no page of the site: the status file for other sites, the pages behind short addresses, posters.

# Once the last morning entry no longer counts. $unknown: status-not-entered-today or status-entry-too-old; $moment with
# its year; $sentence: how the course was then.
status-file-once-over = { $unknown } This was true at { $moment }: { $sentence }

# Leads from a short address to its notice
short-page-notice = Read the whole notice

# Leads from a notice to its poster
poster-link = Poster to print
# On a poster. $name: a row of "Day by day" in bold, such as "Back to normal"
poster-row = { $name }: { $value }
# What a screen reader says of the square code on a poster
poster-code = Code with the address of this notice
# Before the short address and beside the code
poster-whole-notice = The whole notice, and how it stands now:
# $moment with its year
poster-as-it-stood = This poster tells how it stood at { $moment }.
