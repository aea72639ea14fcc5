package pdf

import (
	"bytes"
	"errors"
	"fmt"
	"io"

	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"
)

// foreign reads an attachment out of a file that another program has put together anew: printed into another, stamped, made ready for
// the web, its objects packed. A library reads it; what it cannot take is a file that nothing is read from.
//
// Errors: ErrForeign where it is no file that the library reads, ErrNothing where nothing of that name is attached.
func foreign(data []byte, name string) (found []byte, err error) {
	defer func() {
		if recover() != nil { // a damaged file is the library's affair, not the program's
			found, err = nil, ErrForeign
		}
	}()
	api.DisableConfigDir() // nothing is written into a person's home
	conf := model.NewDefaultConfiguration()
	conf.ValidationMode = model.ValidationRelaxed
	list, err := api.ExtractAttachmentsRaw(bytes.NewReader(data), "", nil, conf)
	if err != nil {
		return nil, ErrForeign
	}
	for _, a := range list {
		if a.FileName != name {
			continue
		}
		text, err := io.ReadAll(io.LimitReader(a, Most+1))
		if err != nil || len(text) > Most {
			return nil, fmt.Errorf("the attachment %s is damaged: %w", name, errors.Join(err, ErrNothing))
		}
		return text, nil
	}
	return nil, ErrNothing
}
