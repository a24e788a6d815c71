# Coachwright's bench tools.  `make help` lists what there is; `make run` and `make test` need
# nothing but Python 3.11 or newer (with venv) and make.

PYTHON ?= $(shell for each in python3 python3.14 python3.13 python3.12 python3.11; do \
	$$each -c 'import sys; sys.exit(sys.version_info < (3, 11))' 2>/dev/null \
	&& { echo $$each; exit; }; done; echo python3)
# What make run is told besides: --no-serve, or options of coachwright serve (--port 8900).
ARGS ?=
VENV := .venv
BIN := $(VENV)/bin
DEMO := demos/night-watch.toml
INSTALL := $(BIN)/python -m pip install --quiet --disable-pip-version-check --prefer-binary

# Every version is pinned, also of what builds the package in its own room: older pip reads the
# first for that, newer pip the second.  Relative, because pip splits these at spaces.
export PIP_CONSTRAINT := constraints.txt
export PIP_BUILD_CONSTRAINT := constraints.txt
PINS := pyproject.toml constraints.txt

.DEFAULT_GOAL := help
.PHONY: help run test browser check format facets bench screens pictures pins clean
.DELETE_ON_ERROR:

help:  ## Say what there is.
	@echo "make run     install, assess the first demo build, print its job pack into out/, open the bench"
	@echo "             (make run ARGS=--no-serve ends after the job pack, for scripts)"
	@echo "make test    run every test, with coverage of the floors that compute"
	@echo "make check   lint, format, types and import contract"
	@echo "make bench   measure commands, stages, the bench in the browser and the store against their budgets"
	@echo "make screens write a picture of every page of the bench into out/screens/"
	@echo "make pictures take the pictures of the README anew"
	@echo "make format  format the source and mend what the linter can"
	@echo "make facets  write docs/facets.md anew from the facets as they are declared"
	@echo "make pins    write constraints.txt anew from what is installed"
	@echo "make clean   take away everything that make has made"

run: $(VENV)/.for-run  ## Assess the first demo build, print its job pack, open the bench.
	$(BIN)/coachwright check $(DEMO)
	$(BIN)/coachwright print $(DEMO) -o out
	@echo "Next: open the papers in out/, then write your own build: $(BIN)/coachwright new my-build.toml"
ifeq (,$(filter --no-serve,$(ARGS)))
	@echo "Opening the bench in the browser; it stays open until Ctrl-C ..."
	@$(BIN)/coachwright serve $(ARGS)
endif

# The bench is tried in a real browser; where it cannot be had, those tests fail and say so.
browser:  ## Install the browser that the tests drive, where it is missing.
	@test -x /usr/bin/chromium || { command -v apt-get > /dev/null && [ "$$(id -u)" = 0 ] \
		&& echo "Installing the browser for the tests ..." && apt-get update -qq > /dev/null \
		&& DEBIAN_FRONTEND=noninteractive apt-get install -qq -y chromium > /dev/null; } \
		|| echo "No browser at /usr/bin/chromium: install it with: sudo apt-get install chromium"

test: $(VENV)/.for-test browser  ## Run every test.
	$(BIN)/python -m pytest -n 2 --cov --cov-report=term --cov-fail-under=95
	@echo "Next: make check (lint, types, import contract), or make run to see a build assessed"

check: $(VENV)/.for-check  ## Lint, format, types and import contract.
	$(BIN)/ruff check .
	$(BIN)/ruff format --check .
	$(BIN)/mypy
	$(BIN)/lint-imports --no-logo
	@echo "Next: make test (every test), then commit"

format: $(VENV)/.for-check  ## Format the source and mend what the linter can.
	$(BIN)/ruff check --fix-only --exit-zero .
	$(BIN)/ruff format .

bench: $(VENV)/.for-test  ## Measure against the budgets.
	$(BIN)/python -m benchmarks

screens: $(VENV)/.for-test  ## Write pictures of every page of the bench.
	$(BIN)/python -m tests.web.screens

pictures: $(VENV)/.for-test  ## Take the pictures of the README anew.
	$(BIN)/python -m tests.web.pictures

facets: $(VENV)/.for-test  ## Write docs/facets.md anew.
	$(BIN)/python -m tests.support.facets_page

pins: $(VENV)/.for-check  ## Write constraints.txt anew.
	$(INSTALL) hatchling editables
	$(BIN)/python -m pip freeze --disable-pip-version-check --exclude-editable > $(VENV)/frozen
	grep '==' $(VENV)/frozen | grep -v '^#' > constraints.txt

clean:  ## Take away everything that make has made.
	rm -rf $(VENV) out build dist htmlcov .coverage .coverage.*
	rm -rf .mypy_cache .ruff_cache .pytest_cache .hypothesis .import_linter_cache
	find src tests benchmarks -name __pycache__ -type d -prune -exec rm -rf {} +

$(VENV)/.made:
	@$(PYTHON) -c 'import sys; sys.exit(sys.version_info < (3, 11))' || { \
		echo "Coachwright needs Python 3.11 or newer, and $(PYTHON) is not that." \
			"Name one that is: make PYTHON=/path/to/python3.11"; exit 1; }
	@echo "Making $(VENV); the first time takes about a minute ..."
	rm -rf $(VENV)
	$(PYTHON) -m venv $(VENV)
	@touch $@

$(VENV)/.for-run: $(VENV)/.made $(PINS)
	$(INSTALL) --editable .
	@touch $@

$(VENV)/.for-test: $(VENV)/.made $(PINS)
	$(INSTALL) --editable '.[test]'
	@touch $(VENV)/.for-run $@

$(VENV)/.for-check: $(VENV)/.made $(PINS)
	$(INSTALL) --editable '.[test,check]'
	@touch $(VENV)/.for-run $(VENV)/.for-test $@
