// Package words holds what the crew reads, in the crew's language: one table for each language, templates/words/NAME.toml, and
// tables of an office's own. A table is read whole before a page is drawn, and held against the English one: the same keys,
// the same places in each text, so that no page can lack a word while it is drawn.
//
// Coordinates and units: none. Figures come to a table printed; no table changes one.
//
// Order: none.
//
// Not here: lengths and clocks (packages length and room), where words stand on a page (packages folio, crewday, card, crew,
// pole), and what is data or the office's: tables, JSON, check, the architect's set. Those are English.
package words
