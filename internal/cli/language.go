package cli

import (
	"fmt"
	"strings"

	"flitchlay/internal/words"
)

// wordsOf gives the words of the crew's pages: those of a language that comes with the program, by its name, or an office's own
// by the path of its table from the room file's folder. Two with a plus between them stand side by side where a page has room.
//
// Errors: a roomError with every mistake of a table of the office's own.
func (c *call) wordsOf(language, folder string) (*words.Table, error) {
	if language == "" {
		return words.English(), nil
	}
	name, beside, two := strings.Cut(language, "+")
	t, err := c.oneLanguage(name, wordsRole, folder)
	if err != nil || !two {
		return t, err
	}
	other, err := c.oneLanguage(beside, otherRole, folder)
	if err != nil {
		return nil, err
	}
	return words.Paired(t, other), nil
}

func (c *call) oneLanguage(name, role, folder string) (*words.Table, error) {
	if words.IsName(name) {
		return words.Named(name)
	}
	path, text, err := c.beside(role, name, folder)
	if err != nil {
		return nil, fmt.Errorf("table of words %s cannot be read: %w", path, plain(err))
	}
	t, err := words.Decode(path, text)
	if err != nil {
		return nil, &roomError{err}
	}
	return t, nil
}
