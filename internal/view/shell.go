package view

import (
	"bytes"
	"encoding/json"
	"html/template"
	"io/fs"
	"sync"

	"flitchlay/internal/page"
)

// shell is the page before it has asked for a room: headings and places, all words of the screen, nothing else.
var shell = sync.OnceValue(func() []byte {
	text, err := fs.ReadFile(assets, "assets/view.html")
	if err != nil {
		panic(err) // it is embedded
	}
	words, err := json.Marshal(page.Words())
	if err != nil {
		panic(err) // they are texts
	}
	t := template.Must(template.New("view").Funcs(template.FuncMap{"word": page.Word}).Parse(string(text)))
	var out bytes.Buffer
	if err := t.Execute(&out, map[string]any{"Words": string(words)}); err != nil {
		panic(err) // nothing in it can fail
	}
	return out.Bytes()
})
