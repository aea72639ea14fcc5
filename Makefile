# Needs Go and make; `make check` and `make gallery` need more, which .ci/run installs.

GO      ?= go
OUT     ?= out
ROOM    ?= samples/reading-room.toml
FUZZ    ?= 30s
ALL      = GOGC=400 FLITCHLAY_CHECK=1 $(GO) test -timeout 60m -tags glpsol ./internal/seam ./...
BIN     := bin/flitchlay
SAMPLES := $(wildcard samples/*.toml)
CHECKED  = grep -rlE --include='*_test.go' 'internal/(effort|roomtest)"' cmd internal templates | xargs -n1 dirname | sort -u | sed 's:^:flitchlay/:'

# The program and its tests need no C compiler, and link faster without one; the race detector needs it.
export CGO_ENABLED := 0

.PHONY: demo test check build bench fuzz update gallery hashes clean vet lint format race large long

# Draws the closed sample room: both PDF sets and one SVG for each page.
demo: build
	@mkdir -p $(OUT)
	$(BIN) draw $(ROOM) -o $(OUT)
	@echo "The drawings of $(ROOM) are in $(OUT)/."

build:
	@mkdir -p bin
	$(GO) build -o $(BIN) ./cmd/flitchlay

# What a person waits for: few random cases, of each list its parts by turns, and vet left to make check. With FLITCHLAY_CHECK=1 it is all of them, as make
# large has it. The garbage collector works less: tests allocate much and end soon.
test:
ifeq ($(FLITCHLAY_CHECK),1)
	$(ALL)
else
	GOGC=400 $(GO) test -vet=off ./...
endif

# All that is held before a change goes in: form, lint, house rules, races, long comparisons with other programs, and the
# drawings as other programs read them.
check: vet lint format race large

vet:
	$(GO) vet ./...
	$(GO) vet -tags glpsol ./internal/seam/...

# The linter is a tool of the module: go.mod says which version, and the go command gets and builds it.
lint:
	$(GO) tool staticcheck ./...
	$(GO) tool staticcheck -tags glpsol ./internal/seam/...

format:
	@bad=$$(gofmt -l cmd internal templates); if [ -n "$$bad" ]; then echo "gofmt would change:"; echo "$$bad"; exit 1; fi

# The packages that do things side by side, or whose callers do. The detector slows a program tenfold, so the solver's
# comparisons are few here; make large runs them all without it.
race:
	CGO_ENABLED=1 FLITCHLAY_CHECK= FLITCHLAY_SPANS=200 $(GO) test -race ./internal/cli/... ./internal/view/... ./internal/font/... ./internal/svg/... ./internal/pdf/...
	CGO_ENABLED=1 FLITCHLAY_CHECK= FLITCHLAY_SPANS=200 $(GO) test -race -run 'BruteForce|Concurrent' ./internal/seam

# With FLITCHLAY_CHECK=1 the comparisons are long ones, and a program that is not installed is a failure. What make test has just run
# that way is not run twice. The solver's, the slowest, begin first, with GLPK beside them, so that nothing has to wait for them alone.
large:
	$(ALL)

# The comparisons with slow oracles at their full number: for a night, after a change of the solver or of the layout.
long:
	FLITCHLAY_CHECK=long $(GO) test -count=1 -timeout 10h -tags glpsol $$($(CHECKED))

bench:
	$(GO) test -run '^$$' -bench . -benchmem ./...

# Every fuzz target in turn, FUZZ each.
fuzz:
	@for dir in $$(grep -ls --include='*_test.go' -r '^func Fuzz' internal cmd | xargs -n1 dirname | sort -u); do \
		for target in $$(grep -hos '^func Fuzz[A-Za-z0-9]*' $$dir/*_test.go | cut -c6-); do \
			echo "$$dir $$target"; $(GO) test -run '^$$' -fuzz "^$$target\$$" -fuzztime $(FUZZ) ./$$dir || exit 1; \
		done; \
	done

# Writes the expected files of the tests anew, the picture of the README among them. Look at every change before it goes in.
update:
	FLITCHLAY_UPDATE=1 $(GO) test -count=1 ./...
	@git status --short

# Every page of every sample as a picture, and a page to look through them: out/gallery/index.html. With BEFORE=REVISION
# each page stands beside the same page as that revision draws it, and pages that look different are framed.
gallery: build
	@rm -rf out/gallery && mkdir -p out/gallery
	@if [ -n "$(BEFORE)" ]; then \
		git clone -q . out/gallery/.source && git -C out/gallery/.source checkout -q $(BEFORE) && \
		(cd out/gallery/.source && $(GO) build -o ../.before ./cmd/flitchlay) || exit 1; \
	fi
	@for room in $(SAMPLES); do \
		name=$$(basename $$room .toml); \
		$(BIN) draw $$room -o out/gallery/$$name || [ $$? -eq 1 ] || exit 1; \
		if [ -n "$(BEFORE)" ]; then out/gallery/.before draw $$room -o out/gallery/before/$$name || true; fi; \
	done
	@for page in out/gallery/*/svg/*.svg out/gallery/before/*/*.svg out/gallery/before/*/svg/*.svg; do \
		[ -e "$$page" ] || continue; rsvg-convert -d 110 -p 110 -b white -o $${page%.svg}.png $$page || exit 1; done
	@{ echo '<!DOCTYPE html><meta charset="utf-8"><title>flitchlay: all pages of all samples</title>'; \
	echo '<style>body{font-family:sans-serif;margin:2em}img{width:48%;border:1px solid #999;margin:4px}.new{border:4px solid #000}</style>'; \
	for room in $(SAMPLES); do \
		name=$$(basename $$room .toml); echo "<h2>$$name</h2>"; \
		for page in out/gallery/$$name/svg/*.png; do \
			p=$${page#out/gallery/}; n="$$name $$(basename $$p .png)"; class=""; old="out/gallery/before/$$p"; \
			[ -e "$$old" ] || old="out/gallery/before/$$name/$$(basename $$page)"; \
			if [ -e "$$old" ]; then cmp -s "$$old" "$$page" || class=" class=\"new\""; \
				echo "<p>$$n: before, now</p><img src=\"$${old#out/gallery/}\" alt=\"$$n before\">"; fi; \
			echo "<a href=\"$${p%.png}.svg\"><img$$class src=\"$$p\" alt=\"$$n\" title=\"$$n\"></a>"; \
		done; \
	done; } > out/gallery/index.html
	@rm -rf out/gallery/.source out/gallery/.before
	@echo "All pages are in out/gallery/index.html."

# One SHA-256 for every output of every room: PDF sets, SVG pages, layout, tables, findings. Run it before and after a change
# that is to change no output, and compare the two lists. HASHED names more rooms or folders of rooms; BIN another program.
HASHED ?=
hashes: build
	@rm -rf out/hashes && mkdir -p out/hashes
	@for room in $$(find samples templates/rooms $(HASHED) -name '*.toml' | sort); do \
		name=$$(echo $$room | tr / _); dir=out/hashes/$${name%.toml}; mkdir -p $$dir; \
		for set in draw "check" "layout" "count" "count --csv" "count --json" "compare" "climate"; do \
			case $$set in draw) $(BIN) draw $$room -o $$dir >$$dir/draw.txt 2>&1;; \
			*) timeout 120 $(BIN) $$set $$room >"$$dir/$$set.txt" 2>&1;; esac; echo "exit status $$?" >>"$$dir/$$set.txt"; \
		done; \
		$(BIN) compare $$room -o $$dir/compare.pdf >/dev/null 2>&1 || true; \
		$(BIN) diff samples/reading-room.toml $$room >$$dir/diff.txt 2>&1 || true; \
	done
	@find out/hashes -type f -print0 | sort -z | xargs -0 sha256sum | sed 's:out/hashes/::' > out/hashes.txt
	@echo "$$(wc -l < out/hashes.txt) outputs in out/hashes.txt, together $$(sha256sum < out/hashes.txt | cut -c1-16)"

clean:
	rm -rf bin out
