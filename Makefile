# Everything runs in .venv of this checkout; only Python 3.11 or newer and make are needed.
PYTHON ?= python3
VENV := .venv
BIN := $(VENV)/bin
OUTPUT ?= output
AS_OF ?= 2027-09-14 09:30
MINUTES ?= 60
STAMP := $(VENV)/.ready

.DEFAULT_GOAL := help
.PHONY: help site test serve bench lint html axe pictures fuzz clean

help: ## show this
	@echo "make site    build the demo club into $(OUTPUT)/ and say where to open it"
	@echo "make test    everything that guards the project: tests, types, style, contracts, coverage"
	@echo "make serve   build, then show the site on http://localhost:8000/"
	@echo "make bench   measure, as ratios in one run"
	@echo "make html    build, then the Nu checker over every page (needs npm and java)"
	@echo "make axe     build, then axe over every page in both themes, narrow and wide (needs a Chromium)"
	@echo "make pictures  build, then photograph each kind of page into build/pictures/ (needs a Chromium)"
	@echo "make fuzz    look for bytes on which a reader fails, for MINUTES=$(MINUTES) (needs Linux or macOS)"
	@echo "make clean   remove what was made"

$(STAMP): pyproject.toml
	@$(PYTHON) -c 'import sys; sys.exit(sys.version_info < (3, 11) and "Swardcast needs Python 3.11 or newer; this is " + sys.version.split()[0])'
	$(PYTHON) -m venv $(VENV)
	$(BIN)/python -m pip install --quiet --disable-pip-version-check --upgrade pip
	$(BIN)/python -m pip install --quiet --disable-pip-version-check --editable '.[test]'
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

pictures: site ## each kind of page on three screens, in both themes and on paper
	$(BIN)/python -m tests.pictures '$(OUTPUT)' build/pictures

fuzz: $(STAMP) ## bytes on which a reader fails
	$(BIN)/python -m pip install --quiet --disable-pip-version-check --editable '.[test,fuzz]'
	$(BIN)/python -m tests.bad_input.fuzz --minutes '$(MINUTES)' --findings build/fuzz

clean: ## remove what was made
	rm -rf $(VENV) $(OUTPUT) .mypy_cache .ruff_cache .pytest_cache .import_linter_cache .hypothesis .coverage dist build
