# The usual work on this checkout; plain pip does it all, see README.md.

VENV := .venv
BIN := $(VENV)/bin
DEMO := build/demo
# The first Python of 3.11 or later; name another with: make PYTHON=...
PYTHON ?= $(shell for each in python3 python3.14 python3.13 python3.12 python3.11; do \
	$$each -c 'import sys; sys.exit(sys.version_info < (3, 11))' 2>/dev/null \
	&& echo $$each && break; done)

.PHONY: help demo serve test check format lock clean chromium pango

help:
	@echo "make demo    build the sample units and their sticker sheets, say where they are"
	@echo "make serve   show the demo's website on http://127.0.0.1:8000/"
	@echo "make test    run all tests; installs Chromium and Pango where apt can"
	@echo "make check   format, lint, types, import contracts, then all tests"
	@echo "make format  format the code"
	@echo "make lock    write the lock files anew from pyproject.toml"
	@echo "make clean   remove what the targets above made, but for the environment"

# The demo is a workspace of its own, made anew each time: its sheets are stuck on no
# unit, so its ledger of printed stickers must not become the checkout's.
demo: $(VENV)/installed
	@rm -rf $(DEMO)
	@$(BIN)/hatchleaf init --samples $(DEMO) >/dev/null
	@$(BIN)/hatchleaf build --workspace $(DEMO) >/dev/null
	@mkdir $(DEMO)/printed-out
	@for file in $(DEMO)/unit_specs/*.yml; do \
		unit=$$(basename $$file .yml); \
		$(BIN)/hatchleaf stickers $$unit --workspace $(DEMO) \
			--to $(DEMO)/printed-out/$$unit.pdf >/dev/null || exit 1; \
	done
	@echo
	@echo "The guides of the sample units are done. Open a file, or run 'make serve' and"
	@echo "open an address, which is where the stickers lead."
	@for file in $(DEMO)/unit_specs/*.yml; do \
		unit=$$(basename $$file .yml); \
		code=$$(sed -n 's/^code: "\([0-9]*\)".*/\1/p' $$file); \
		echo "  $$unit"; \
		echo "    website     http://127.0.0.1:8000/$$code/"; \
		echo "    phone copy  $(DEMO)/site/$$code/manual.html"; \
		echo "    stickers    $(DEMO)/printed-out/$$unit.pdf"; \
	done

serve:
	@test -d $(DEMO)/site || { echo "run 'make demo' first"; exit 1; }
	@echo "http://127.0.0.1:8000/CODE/ for each of:" $$(ls $(DEMO)/site | grep -E '^[1-9][0-9]{14}$$')
	@echo "Ctrl-C ends it."
	@$(BIN)/python -m http.server --bind 127.0.0.1 --directory $(DEMO)/site 8000 || true

# Without Chromium the rest is tested, and said so; with BROWSER=required that fails.
# The same holds for Pango, which printing needs, and PRINT=required.
test: $(VENV)/installed-dev chromium pango
	@$(HAS_PANGO) || [ "$(PRINT)" != required ] || { echo "Pango is missing."; exit 1; }
	@if command -v chromium >/dev/null || command -v chromium-browser >/dev/null; then \
		$(BIN)/python -m pytest -q -n auto; \
	elif [ "$(BROWSER)" = required ]; then \
		echo "Chromium is missing."; exit 1; \
	else \
		$(BIN)/python -m pytest -q -n auto --ignore=tests/browser && \
		echo "LEFT OUT: the browser tests, for want of Chromium. Install the package" && \
		echo "'chromium' of your system and run this again."; \
	fi

chromium:
	@if ! command -v chromium >/dev/null && ! command -v chromium-browser >/dev/null \
		&& command -v apt-get >/dev/null && [ "$$(id -u)" = 0 ]; then \
		echo "installing Chromium for the browser tests"; \
		{ apt-get update -q && DEBIAN_FRONTEND=noninteractive \
			apt-get install -y -q --no-install-recommends chromium; } >/dev/null \
		|| echo "apt could not install it"; \
	fi

HAS_PANGO = $(BIN)/python -c 'import weasyprint' >/dev/null 2>&1
pango: $(VENV)/installed-dev
	@if ! $(HAS_PANGO) && command -v apt-get >/dev/null && [ "$$(id -u)" = 0 ]; then \
		echo "installing Pango for the tests of printing"; \
		{ apt-get update -q && DEBIAN_FRONTEND=noninteractive \
			apt-get install -y -q --no-install-recommends libpango-1.0-0 \
			libpangoft2-1.0-0 libharfbuzz-subset0; } >/dev/null \
		|| echo "apt could not install it"; \
	fi
	@$(HAS_PANGO) || echo "LEFT OUT: the tests that print a guide, for want of Pango." \
		"Install what 'hatchleaf print' names and run this again."

# TESTED=yes leaves the tests out, for who has just run them.
check: $(VENV)/installed-dev
	$(BIN)/ruff format --check .
	$(BIN)/ruff check .
	$(BIN)/mypy
	$(BIN)/lint-imports
	@test "$(TESTED)" = yes || $(MAKE) --no-print-directory test

format: $(VENV)/installed-dev
	$(BIN)/ruff format .
	$(BIN)/ruff check --fix .

# No host and no path of this machine gets into them.
LOCK := $(BIN)/uv pip compile pyproject.toml --group backend --universal \
	--python-version 3.11 --generate-hashes --no-emit-index-url --no-header \
	--no-annotate --quiet
lock: $(VENV)/installed-dev
	$(LOCK) -o requirements.lock
	$(LOCK) --group dev -c requirements.lock -o requirements-dev.lock

clean:
	rm -rf build dist .hatchleaf .mypy_cache .ruff_cache .pytest_cache .hypothesis \
		.import_linter_cache

$(BIN)/python:
	@test -n "$(PYTHON)" || { echo "Python 3.11 or later is needed."; exit 1; }
	@$(PYTHON) -m venv $(VENV) || { rm -rf $(VENV); \
		echo "Python's venv is needed; on Debian: apt-get install python3-venv"; exit 1; }

PIP := $(BIN)/python -m pip --disable-pip-version-check --quiet
# Exact versions with their hashes, then this checkout itself, fetching nothing more.
HERE := $(PIP) install --no-build-isolation --no-deps --editable .

$(VENV)/installed: requirements.lock pyproject.toml | $(BIN)/python
	@echo "installing into $(VENV)"
	@$(PIP) install --require-hashes --requirement requirements.lock
	@$(HERE)
	@touch $@

$(VENV)/installed-dev: requirements-dev.lock pyproject.toml | $(BIN)/python
	@echo "installing into $(VENV), with what development needs"
	@$(PIP) install --require-hashes --requirement requirements-dev.lock
	@$(HERE)
	@touch $@ $(VENV)/installed
