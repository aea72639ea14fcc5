package job

import (
	"errors"
	"strings"

	"flitchlay/internal/source"
)

// problems collects what is wrong in several files, each thing once: what rooms share is wrong in all of them.
type problems struct {
	said []string
	have map[string]bool
}

// add takes the mistakes of an error.
func (p *problems) add(err error) {
	texts := []string{err.Error()}
	if m, ok := errors.AsType[*source.Mistakes](err); ok {
		texts = m.Said()
	}
	for _, t := range texts {
		if p.have[t] {
			continue
		}
		if p.have == nil {
			p.have = map[string]bool{}
		}
		p.have[t] = true
		p.said = append(p.said, t)
	}
}

// err is all of it as one error, nil where there is nothing.
func (p *problems) err() error {
	if len(p.said) == 0 {
		return nil
	}
	return errors.New(strings.Join(p.said, "\n"))
}
