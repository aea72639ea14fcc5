package job

import (
	"errors"
	"strings"

	"flitchlay/internal/source"
)

// Problems collects what is wrong in several files, each thing once: what rooms share is wrong in all of them.
type Problems struct {
	said []string
	have map[string]bool
}

// Add takes the mistakes of an error, and gives those that are new.
func (p *Problems) Add(err error) (fresh []string) {
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
		fresh = append(fresh, t)
	}
	p.said = append(p.said, fresh...)
	return fresh
}

// Err is all of it as one error, nil where there is nothing.
func (p *Problems) Err() error {
	if len(p.said) == 0 {
		return nil
	}
	return errors.New(strings.Join(p.said, "\n"))
}
