"""Pelican's settings for a Swardcast site; `swardcast build` sets the club, the moment and the output."""

from pathlib import Path

_HERE = Path(__file__).resolve().parent

PLUGINS = ["swardcast"]
SWARDCAST_CLUB = str(_HERE.parent / "demo_content")
SWARDCAST_AS_OF = None

SITENAME = "Course notices"  # the plugin puts the club's name here
SITEURL = ""
RELATIVE_URLS = True  # works from a folder, a sub-path or a server of its own
TIMEZONE = "UTC"
DEFAULT_LANG = "en"
DEFAULT_DATE_FORMAT = "%d %B %Y"
# Pelican's own settings, but for columns of a table: the policy of our pages lets no style stand in them.
MARKDOWN = {
    "extension_configs": {
        "markdown.extensions.codehilite": {"css_class": "highlight"},
        "markdown.extensions.extra": {"tables": {"use_align_attribute": True}},
        "markdown.extensions.meta": {},
    },
    "output_format": "html5",
}
PATH = str(_HERE / "content")
THEME = str(_HERE / "theme")
THEME_STATIC_DIR = "theme"

ARTICLE_PATHS = ["articles"]
PAGE_PATHS = ["pages"]
STATIC_PATHS = []
ARTICLE_URL = ARTICLE_SAVE_AS = "notices/{slug}/index.html"
PAGE_URL = PAGE_SAVE_AS = "pages/{slug}/index.html"
CATEGORY_URL = CATEGORY_SAVE_AS = "work/{slug}/index.html"
TAG_URL = TAG_SAVE_AS = "surfaces/{slug}/index.html"
INDEX_SAVE_AS = "notices/index.html"
AUTHOR_SAVE_AS = ""
DIRECT_TEMPLATES = ["index"]
DEFAULT_PAGINATION = False
SUMMARY_MAX_LENGTH = None

# Pelican's own feeds carry the clock and share one id; Swardcast writes its own.
FEED_ALL_ATOM = FEED_ALL_RSS = CATEGORY_FEED_ATOM = CATEGORY_FEED_RSS = None
TAG_FEED_ATOM = TAG_FEED_RSS = AUTHOR_FEED_ATOM = AUTHOR_FEED_RSS = TRANSLATION_FEED_ATOM = None

LOAD_CONTENT_CACHE = False
