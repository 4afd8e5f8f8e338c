# Everything a person or a machine does with this checkout. `make` alone lists the goals.
# Written for GNU make 3.81 and a POSIX shell, so that it runs on macOS as it is.

BIN := .venv/bin
UV_VERSION := 0.13.9
UV := .make/uv/bin/uv
UV_READY := .make/uv-$(UV_VERSION)
READY_RUN := .venv/.ready-run
READY_TEST := .venv/.ready-test

export UV_PYTHON_DOWNLOADS := never
export UV_PROJECT_ENVIRONMENT := .venv

.DEFAULT_GOAL := help
.PHONY: help run test check static doctests fix fuzz bench pictures docs browser kernels

help: ## List the goals
	@awk -F ':.*## ' '/^[a-z]+:.*## /{printf "  make %-7s %s\n", $$1, $$2}' $(MAKEFILE_LIST)

run: $(READY_RUN) ## Open the workbench (ARGS="--port 8765" to pass options on)
	@$(BIN)/entremetry serve $(ARGS)

test: $(READY_TEST) ## Install what tests need, then run every test
	@$(MAKE) --no-print-directory -j2 kernels browser static docs
	@$(BIN)/pytest -n 2 --doctest-modules tests src

check: $(READY_TEST) static doctests docs ## Format, lint, types, import contracts, doctests, docs

static: $(READY_TEST)
	@$(BIN)/ruff format --check .
	@$(BIN)/ruff check .
	@$(BIN)/mypy
	@$(BIN)/lint-imports --no-logo

doctests: $(READY_TEST)
	@$(BIN)/pytest -q --doctest-modules src

fix: $(READY_TEST) ## Format, mend what lint can mend, write the generated reference pages
	@$(BIN)/ruff check --fix .
	@$(BIN)/ruff format .
	@$(BIN)/python tools/catalogue || true
	@$(BIN)/python tools/reference

fuzz: $(READY_TEST) ## Property tests with fresh random input (COUNT=2000 examples a law)
	@ENTREMETRY_EXAMPLES=$(or $(COUNT),2000) \
	  $(BIN)/pytest -n 2 --hypothesis-profile=fuzz tests/properties

pictures: $(READY_TEST) browser ## Take the pictures of the documentation anew
	@$(BIN)/pytest -q tests/browser/test_screens.py
	@for name in $$(grep -o 'pages/[a-z-]*.jpg' docs/pages.md); do cp .screens/$$name docs/images/$$name; done

bench: $(READY_TEST) ## Time the hot paths against a reference measured in the same run
	@$(BIN)/python benchmarks/run.py

docs: $(READY_TEST) ## Build the documentation, warnings as errors
	@$(BIN)/sphinx-build -q -W --keep-going -E docs docs/_build/html
	@echo "docs/_build/html/index.html"

browser: $(READY_TEST)
	@$(BIN)/python tests/browser/chromium.py

kernels: $(READY_TEST)
	@$(BIN)/python tools/kernels.py

# The environment. It is made once and then kept up to date in place. uv lives apart in .make/, so that nothing is needed but Python and git.
# An environment that was made elsewhere, or whose Python is gone, is made anew.
VENV = test -x $(BIN)/python || $(UV) venv --quiet --python "$$(sh tools/setup/python.sh)" .venv
PLACE := $(shell sh tools/setup/forget_stale.sh "$(CURDIR)")

$(UV_READY): tools/setup/uv.sh
	@sh tools/setup/uv.sh $(UV_VERSION)
	@touch $@

$(READY_RUN): pyproject.toml uv.lock $(UV_READY)
	@$(VENV)
	@$(UV) sync --frozen --no-dev --inexact --compile-bytecode
	@$(BIN)/python -m compileall -q src
	@echo "$(CURDIR)" > .venv/.place
	@touch $@

$(READY_TEST): pyproject.toml uv.lock $(UV_READY)
	@$(VENV)
	@$(UV) sync --frozen --compile-bytecode
	@$(BIN)/python -m compileall -q src
	@echo "$(CURDIR)" > .venv/.place
	@touch $(READY_RUN) $@
