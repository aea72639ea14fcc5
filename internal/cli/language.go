package cli

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"flitchlay/internal/words"
)

// wordsOf gives the words of the crew's pages: those of a language that comes with the program, by its name, or an office's own
// by the path of its table from the room file's folder. Two with a plus between them stand side by side where a page has room.
//
// Errors: a roomError with every mistake of a table of the office's own.
func wordsOf(language, folder string) (*words.Table, error) {
	if language == "" {
		return words.English(), nil
	}
	name, beside, two := strings.Cut(language, "+")
	t, err := oneLanguage(name, folder)
	if err != nil || !two {
		return t, err
	}
	other, err := oneLanguage(beside, folder)
	if err != nil {
		return nil, err
	}
	return words.Paired(t, other), nil
}

func oneLanguage(name, folder string) (*words.Table, error) {
	path := name
	if words.IsName(name) {
		text, err := words.Text(name)
		if err != nil {
			return nil, err
		}
		return words.Decode("words/"+name+".toml", text)
	}
	if !filepath.IsAbs(path) {
		path = filepath.Join(folder, path)
	}
	text, err := os.ReadFile(path)
	if err != nil {
		return nil, fmt.Errorf("table of words %s cannot be read: %w", path, plain(err))
	}
	t, err := words.Decode(path, text)
	if err != nil {
		return nil, &roomError{err}
	}
	return t, nil
}
