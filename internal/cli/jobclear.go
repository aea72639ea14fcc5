package cli

import (
	"os"
	"path/filepath"
	"slices"

	"flitchlay/internal/job"
)

// roomsRecord is the name under which the record of a job's folder keeps the folders of its rooms.
const roomsRecord = "room-folder"

// clearRooms takes away what earlier runs drew of rooms that are no longer in the job, and keeps on record which folders are ours now.
func (d *jobDraw) clearRooms() {
	earlier, err := readRecord(d.to)
	if err != nil {
		return
	}
	var list []drawn
	for _, x := range earlier {
		switch {
		case x.set != roomsRecord:
			list = append(list, x)
		case !slices.ContainsFunc(d.job.Rooms, func(r *job.Room) bool { return r.Folder == x.name }):
			for _, sub := range []string{filepath.Join(d.to, x.name, pagesFolder), filepath.Join(d.to, x.name)} {
				d.clearFolder(sub)
			}
		}
	}
	for _, r := range d.job.Rooms {
		if isFolder(filepath.Join(d.to, r.Folder)) {
			list = append(list, drawn{r.Folder, roomsRecord, sum([]byte(r.Folder))})
		}
	}
	if err := write(d.to, []file{record(list)}); err != nil {
		d.say("%v", err)
	}
}

// clearFolder takes away what is on record of a folder, and the folder where nothing else is in it.
func (d *jobDraw) clearFolder(folder string) {
	list, err := readRecord(folder)
	if err != nil || len(list) == 0 {
		return
	}
	var left []drawn
	for _, x := range list {
		switch removed, err := clear(folder, x); {
		case err != nil:
			d.say("%s is no longer wanted, but left: %v", filepath.Join(folder, x.name), plain(err))
			left = append(left, x)
		case removed:
			d.say("removed %s, which is no longer wanted", filepath.Join(folder, x.name))
		}
	}
	if len(left) == 0 {
		os.Remove(filepath.Join(folder, recordName))
		os.Remove(folder)
	}
}
