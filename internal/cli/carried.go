package cli

import (
	"errors"
	"fmt"

	"flitchlay/internal/pdf"
	"flitchlay/internal/scene"
)

// carriedName is what the room file is called inside every PDF set, whatever the file itself was called: the same room
// gives the same bytes.
const carriedName = "room.toml"

// attached is the room file as a set carries it.
func attached(text []byte) scene.Attachment {
	return scene.Attachment{Name: carriedName, About: "the room file that this set was drawn from", Type: "application/toml", Data: text}
}

// unpacked gives the text of a room: that of the file, or that of the room file which a PDF set of ours carries.
//
// Errors: one sentence that says what is wrong with the PDF file and what to give instead.
func unpacked(name string, data []byte) (string, []byte, error) {
	if !pdf.IsPDF(data) {
		return name, data, nil
	}
	text, err := pdf.Attached(data, carriedName)
	switch {
	case errors.Is(err, pdf.ErrForeign):
		return "", nil, fmt.Errorf("%s is %w: give the room file itself", name, err)
	case errors.Is(err, pdf.ErrNothing):
		return "", nil, fmt.Errorf("%s carries no room file: give the room file itself", name)
	case err != nil:
		return "", nil, fmt.Errorf("%s cannot be used: %w", name, err)
	}
	return name + ": " + carriedName, text, nil
}
