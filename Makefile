# Everything runs in .venv of this checkout; only Python 3.11 or newer and make are needed.
PYTHON ?= python3
VENV := .venv
BIN := $(VENV)/bin
OUTPUT ?= output
AS_OF ?= 2027-09-14 09:30
MINUTES ?= 60
STAMP := $(VENV)/.ready
PIP := $(BIN)/python -m pip --quiet --disable-pip-version-check

# Versions with the hashes of their files, for CPython from 3.11 on Linux, macOS and Windows: first what installs the others.
LOCKS := .locked/build.txt .locked/packages.txt
OLDEST ?= python3.11
NEWEST ?= $(PYTHON)
TESTS ?= tests
TOOLS := build/tools
UV := $(TOOLS)/bin/uv
COMPILE = $(UV) pip compile --quiet --universal --python-version 3.11 --generate-hashes --custom-compile-command 'make lock'

.DEFAULT_GOAL := help
.PHONY: help site test serve bench lint html axe days pictures fuzz lock upgrade versions lowest newest audit \
	licences clean

help: ## show this
	@echo "make site    build the demo club into $(OUTPUT)/ and say where to open it"
	@echo "make test    everything that guards the project: tests, types, style, contracts, coverage"
	@echo "make serve   build, then show the site on http://localhost:8000/"
	@echo "make bench   measure, as ratios in one run"
	@echo "make html    build, then the Nu checker over every page (needs npm and java)"
	@echo "make axe     build, then axe over every page in both themes, narrow and wide (needs a Chromium)"
	@echo "make days    build every day of two years, each held against the day before (an hour; DAYS='--step 14' for fewer)"
	@echo "make pictures  build, then photograph each kind of page into build/pictures/ (needs a Chromium)"
	@echo "make fuzz    look for bytes on which a reader fails, for MINUTES=$(MINUTES) (needs Linux or macOS)"
	@echo "make lock    put into .locked/ what pyproject.toml asks for, keeping each version that still fits"
	@echo "make upgrade  put the newest versions that pyproject.toml allows into .locked/"
	@echo "make versions  run TESTS=$(TESTS) with the lowest versions that pyproject.toml allows, and with the newest"
	@echo "make audit   ask for known weaknesses of the versions in .locked/ (needs the internet)"
	@echo "make licences  list what the program needs, and its licences"
	@echo "make clean   remove what was made"

$(STAMP): pyproject.toml $(LOCKS)
	@$(PYTHON) -c 'import sys; sys.exit(sys.version_info < (3, 11) and "Swardcast needs Python 3.11 or newer; this is " + sys.version.split()[0])'
	$(PYTHON) -m venv $(VENV)
	$(PIP) install --no-deps --require-hashes --requirement .locked/build.txt
	$(PIP) install --no-deps --require-hashes --no-build-isolation --requirement .locked/packages.txt
	$(PIP) install --no-deps --no-build-isolation --editable .
	@touch $@

site: $(STAMP) ## check and build the demo club
	@$(BIN)/swardcast check --club demo_content --as-of '$(AS_OF)'
	@$(BIN)/swardcast build --club demo_content --output '$(OUTPUT)' --as-of '$(AS_OF)'

serve: site ## show the site
	@echo "http://localhost:8000/ shows the site; stop with Ctrl-C."
	@$(BIN)/python -m http.server --bind localhost --directory '$(OUTPUT)' 8000

lint: $(STAMP) ## style, types and contracts
	$(BIN)/ruff check plugins tests site_src demo_content
	$(BIN)/ruff format --check plugins tests site_src demo_content
	$(BIN)/mypy
	$(BIN)/lint-imports

test: lint ## everything that guards the project
	$(BIN)/python -m pytest --numprocesses auto --dist loadscope --cov --cov-report=term --cov-fail-under=90

bench: $(STAMP) ## ratios in one run
	$(BIN)/python -m tests.bench

html: site ## the HTML of every page by the rules of the W3C
	$(BIN)/python -m tests.nu_checker '$(OUTPUT)'

axe: site ## the rules of axe-core on every page, which make test asks of each kind of page
	@$(BIN)/python -m tests.axe_everywhere '$(OUTPUT)'

days: $(STAMP) ## every day of two years, as python -m tests.every_day --help tells
	$(BIN)/python -m tests.every_day $(DAYS)

pictures: site ## each kind of page on three screens, in both themes and on paper
	$(BIN)/python -m tests.pictures '$(OUTPUT)' build/pictures

fuzz: $(STAMP) ## bytes on which a reader fails
	$(PIP) install --editable '.[test,fuzz]'
	$(BIN)/python -m tests.bad_input.fuzz --minutes '$(MINUTES)' --findings build/fuzz

# uv knows how to lock for other systems and how to choose the lowest versions, pip-audit whom to ask for weaknesses.
$(TOOLS)/.ready: Makefile
	$(PYTHON) -m venv $(TOOLS)
	$(TOOLS)/bin/python -m pip --quiet --disable-pip-version-check install 'uv>=0.9' 'pip-audit>=2.9'
	@touch $@

upgrade: NEWER := --upgrade
lock upgrade: $(TOOLS)/.ready ## versions with the hashes of their files
	$(COMPILE) $(NEWER) --group build --output-file .locked/build.txt
	$(COMPILE) $(NEWER) --constraints .locked/build.txt --extra test --output-file .locked/packages.txt pyproject.toml

# Made anew each time: what another run has left would be kept.
define tested
	$(UV) venv --quiet --clear --python $(2) build/$(1)
	$(UV) pip install --quiet --python build/$(1) --resolution $(3) --editable '.[test]'
	build/$(1)/bin/python -m pytest --numprocesses auto --dist loadscope $(TESTS)
endef

versions: lowest newest ## the tests with the lowest versions that are allowed, and with the newest

lowest: $(TOOLS)/.ready
	$(call tested,lowest,$(OLDEST),lowest-direct)

newest: $(TOOLS)/.ready
	$(call tested,newest,$(NEWEST),highest)

audit: $(TOOLS)/.ready ## known weaknesses of what is locked
	@$(TOOLS)/bin/pip-audit --strict --require-hashes --disable-pip --requirement .locked/packages.txt \
	|| { echo "Either a weakness is listed above, or who knows of them could not be asked." >&2; exit 1; }

licences: $(STAMP) ## of what the program needs
	@$(BIN)/python -m tests.licences

clean: ## remove what was made
	rm -rf $(VENV) $(OUTPUT) .mypy_cache .ruff_cache .pytest_cache .import_linter_cache .hypothesis .coverage dist build
