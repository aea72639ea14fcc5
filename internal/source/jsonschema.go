package source

import (
	"bytes"
	"encoding/json"
	"slices"
)

// JSON is the schema in JSON Schema, draft 7, which editors of TOML read: what it lets pass may still be a mistake, what it refuses
// is one. The tables named have to be there.
func (s Schema) JSON(title string, needed ...string) []byte {
	top := s.object("")
	top["$schema"], top["title"] = "http://json-schema.org/draft-07/schema#", title
	if len(needed) > 0 {
		top["required"] = needed
	}
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(top); err != nil {
		panic(err) // maps, lists and texts always encode
	}
	return b.Bytes()
}

// object is a table, with the tables inside it.
func (s Schema) object(path string) object {
	t, _ := s.Table(path)
	fields, required := object{}, []string{}
	for _, k := range t.Keys {
		is := object{"description": k.Doc + " (" + k.Takes() + ")"}
		for name, value := range formOf(k).is.(object) {
			is[name] = value
		}
		if k.Default != "" {
			is["description"] = is["description"].(string) + "; without it " + k.Default
		}
		if k.Required {
			required = append(required, k.Name)
		}
		fields[k.Name] = is
	}
	for _, inner := range s {
		parent, name := cutPath(inner.Path)
		if parent != path || inner.Path == "" {
			continue
		}
		is := s.object(inner.Path)
		if inner.Many {
			is = object{"type": "array", "description": inner.Doc, "items": is}
		}
		if other, both := fields[name]; both {
			is = object{"anyOf": []any{other, is}}
		}
		fields[name] = is
	}
	out := object{"type": "object", "properties": fields, "additionalProperties": false}
	if t.Doc != "" {
		out["description"] = t.Doc
	}
	if len(required) > 0 {
		slices.Sort(required)
		out["required"] = required
	}
	return out
}
