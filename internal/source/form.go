package source

import (
	"regexp"
	"slices"
	"strings"
)

// form is how the values of a kind are written: what an editor holds them to, and an example.
type form struct {
	kind, example string
	is            any // JSON Schema, draft 7
}

type object = map[string]any

// Parts of forms.
var (
	textForm   = object{"type": "string"}
	lengthForm = object{"type": []string{"string", "number"}, "pattern": "[0-9¼½¾⅛⅜⅝⅞⅓⅔]"}
	wholeForm  = object{"type": "integer"}
	numberForm = object{"type": "number"}
	sheetsForm = object{"anyOf": []any{object{"type": "string", "pattern": "^[0-9][-0-9, –—]*$"}, wholeForm, listOf(object{"type": "integer", "minimum": 1})}}
	// some editors take a date of TOML for no text unless the schema says that it is one
	dateForm = either(object{"type": "string", "format": "date"}, object{"type": "string", "pattern": "^ *[0-9]{4}-[0-9]{2}-[0-9]{2} *$"})
	heatForm = object{"type": []string{"string", "number"}, "pattern": "[0-9]"}
	timeForm = object{"type": "string", "pattern": "^ *[0-9]{1,2}"}
)

func listOf(is any) object { return object{"type": "array", "items": is} }

func pairOf(is any) object {
	return object{"type": "array", "items": is, "minItems": 2, "maxItems": 2}
}

func either(forms ...any) object { return object{"anyOf": forms} }

// forms has the one row of each kind that keys of schemas have.
var forms = []form{
	{"text", `"..."`, textForm},
	{"name of a wall", `"North"`, textForm},
	{"length", `"12' 6 3/8"`, lengthForm},
	{"number", `45`, numberForm},
	{"whole number", `2`, wholeForm},
	{"true or false", `true`, object{"type": "boolean"}},
	{"date", `2026-04-14`, dateForm},
	{"time of day", `"7:30"`, timeForm},
	{"degrees F, or \"20 C\"", `68`, heatForm},
	{"sheet numbers", `"1-6, 8-24"`, sheetsForm},
	{"whole number or sheet numbers", `2`, sheetsForm},
	{"list of [sheet number, length]", `[[12, "23 7/16"]]`, listOf(object{"type": "array", "items": []any{wholeForm, lengthForm}, "minItems": 2, "maxItems": 2})},
	{"length or [left, right]", `["0", "1/8"]`, either(lengthForm, pairOf(lengthForm))},
	{"length or list of lengths", `["12' 6", "13' 2"]`, either(lengthForm, listOf(lengthForm))},
	{"length or [bottom, top]", `"3' 10 5/8"`, either(lengthForm, pairOf(lengthForm))},
	{"list of lengths or [bottom, top]", `["1' 11", ["3' 10 5/8", "3' 10 1/2"]]`, listOf(either(lengthForm, pairOf(lengthForm)))},
	{"length, [left, right] or [[x, z], ...]", `["9' 0", "9' 1/2"]`, either(lengthForm, pairOf(lengthForm), listOf(pairOf(lengthForm)))},
	{"length, [left, right] or [[x, length], ...]", `[["0", "4'"], ["8'", "4' 1/8"]]`, either(lengthForm, pairOf(lengthForm), listOf(pairOf(lengthForm)))},
	{"[width, height]", `["5", "9"]`, pairOf(lengthForm)},
	{"\"12:00-12:30\", or a list", `["9:30-9:45", "12:00-12:30"]`, either(timeForm, listOf(timeForm))},
	{"\"auto\" or a length", `"auto"`, either(object{"const": "auto"}, lengthForm)},
	{"\"auto\", or a table", `"auto"`, object{"const": "auto"}},
	{"list of texts", `["..."]`, listOf(textForm)},
	{"list of whole numbers", `[16, 24, 32, 48]`, listOf(wholeForm)},
	{"list of lengths", `[20, 60, 30]`, listOf(lengthForm)},
	{"room numbers", `"301-318, 320"`, either(textForm, listOf(textForm))},
	{"true, or room numbers", `"301-304"`, either(object{"type": "boolean"}, textForm, listOf(textForm))},
	{"sheets by flitch", `"SR-F2 1-4, 6-13"`, either(textForm, listOf(textForm))},
	{"box", `[20, 10, 180, 40]`, object{"type": "array", "items": lengthForm, "minItems": 4, "maxItems": 4}},
	{"word", ``, nil},
}

// formOf finds the form of a key.
//
// Errors: it panics on a kind that has none: that is a fault of the program.
func formOf(k Key) form {
	for _, f := range forms {
		if f.kind != k.Kind {
			continue
		}
		if len(k.Words) > 0 {
			return form{k.Kind, `"` + k.Words[0] + `"`, object{"enum": k.Words}}
		}
		return f
	}
	panic("source: no form for keys that are " + k.Kind)
}

// Example is the key as it may stand in a file.
func (k Key) Example() string {
	f := formOf(k)
	if k.Like != "" {
		return k.Name + " = " + k.Like
	}
	if usual := k.usual(); usual != "" {
		return k.Name + " = " + usual
	}
	if k.Kind == "text" && strings.HasPrefix(k.Doc, "from the pail") {
		_, quoted, _ := strings.Cut(k.Doc, `"`)
		quoted, _, _ = strings.Cut(quoted, `"`)
		return k.Name + ` = "` + quoted + `"`
	}
	return k.Name + " = " + f.example
}

// figure is a default that can be written as it stands in the documentation.
var figure = regexp.MustCompile(`^([0-9][0-9' /.:-]*?)( \(.*)?$`)

// usual is the default as it is written in a file, "" where it is none that can be.
func (k Key) usual() string {
	m := figure.FindStringSubmatch(k.Default)
	switch {
	case slices.Contains(k.Words, k.Default):
		return `"` + k.Default + `"`
	case k.Default == "true" || k.Default == "false":
		return k.Default
	case m == nil || k.Kind == "text":
		if k.Kind == "length" && !k.Required {
			return `"6 3/8"`
		}
		return ""
	case strings.Contains(k.Kind, "length"), strings.Contains(k.Kind, "time"), strings.Contains(k.Kind, ":"):
		return `"` + m[1] + `"`
	}
	return m[1]
}

// Takes says in words what a key takes.
func (k Key) Takes() string {
	if len(k.Words) > 0 {
		return `"` + strings.Join(k.Words, `", "`) + `"`
	}
	return k.Kind
}
