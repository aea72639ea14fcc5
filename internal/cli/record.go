package cli

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// recordName is the file in which a folder of drawings keeps what was drawn into it, so that pages that are no longer
// wanted can be told from files of a person's own.
const recordName = ".flitchlay"

// drawn is one line of a record: a file, the set it belongs to, and what was in it.
type drawn struct{ name, set, sum string }

// sum tells what is in a file.
func sum(data []byte) string {
	s := sha256.Sum256(data)
	return hex.EncodeToString(s[:])
}

// readRecord reads what an earlier run drew into a folder; a folder without a record has nothing of ours.
func readRecord(folder string) ([]drawn, error) {
	text, err := os.ReadFile(filepath.Join(folder, recordName))
	if missing(err) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	var list []drawn
	for _, line := range strings.Split(string(text), "\n") {
		part := strings.SplitN(line, " ", 3)
		// a name with a folder in it is none of ours
		if len(part) == 3 && part[2] == filepath.Base(part[2]) && part[2] != recordName {
			list = append(list, drawn{sum: part[0], set: part[1], name: part[2]})
		}
	}
	return list, nil
}

// record is the record as a file, by name.
func record(list []drawn) file {
	list = slices.Clone(list)
	slices.SortFunc(list, func(a, b drawn) int { return strings.Compare(a.name, b.name) })
	var b strings.Builder
	for _, d := range list {
		fmt.Fprintf(&b, "%s %s %s\n", d.sum, d.set, d.name)
	}
	return file{name: recordName, data: []byte(b.String())}
}

// renew parts the earlier files of a folder into those that stay on record because their set is not drawn now, and those
// of the sets drawn now that are no longer wanted.
func renew(earlier []drawn, files []file, sets map[string]bool) (stay, stale []drawn) {
	wanted := map[string]bool{}
	for _, f := range files {
		wanted[f.name] = true
	}
	for _, d := range earlier {
		switch {
		case wanted[d.name]:
		case sets[d.set]:
			stale = append(stale, d)
		default:
			stay = append(stay, d)
		}
	}
	return stay, stale
}

// clear removes a file that is no longer wanted. One that somebody has changed since it was drawn is left where it is.
func clear(folder string, d drawn) (removed bool, err error) {
	path := filepath.Join(folder, d.name)
	data, err := os.ReadFile(path)
	if missing(err) {
		return false, nil
	}
	if err != nil {
		return false, err
	}
	if sum(data) != d.sum {
		return false, fmt.Errorf("it was changed since it was drawn")
	}
	return true, os.Remove(path)
}
