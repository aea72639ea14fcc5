package view

import (
	"path/filepath"
	"time"

	"github.com/fsnotify/fsnotify"
)

// settled is how long files are left alone before they are read: an editor writes a file in several steps. Then, once what was read
// is seen, comes what takes longer to find.
const (
	settled = 4 * time.Millisecond
	seen    = 150 * time.Millisecond
)

// follow reads the rooms anew whenever one of their files changes. Folders are watched, not files: an editor that writes a new file
// in the place of the old one would else be lost.
//
// Errors: folders cannot be watched.
func (s *Server) follow() (*fsnotify.Watcher, error) {
	w, err := fsnotify.NewWatcher()
	if err != nil {
		return nil, err
	}
	house, _ := s.known.now()
	files, err := s.watch(w, house)
	if err != nil && len(w.WatchList()) == 0 {
		w.Close()
		return nil, err
	}
	go func() {
		timer := time.NewTimer(settled) // what changed while nobody looked
		whole := false
		for {
			select {
			case e, ok := <-w.Events:
				if !ok {
					return
				}
				if name, err := filepath.Abs(e.Name); err == nil && files[name] {
					whole = false
					timer.Reset(settled)
				}
			case <-w.Errors: // an event was lost: look
				timer.Reset(settled)
			case <-timer.C:
				before, _ := s.known.now()
				next := s.source.Read(whole)
				next.Whole = whole
				if whole || next.Sum != before.Sum {
					s.known.take(next)
				}
				files, _ = s.watch(w, next)
				if !whole {
					whole = true
					timer.Reset(seen)
				}
			}
		}
	}()
	return w, nil
}

// watch watches the folders of all files, and gives their names.
//
// Errors: the last folder that cannot be watched; where it is not there it comes with its file's mistake.
func (s *Server) watch(w *fsnotify.Watcher, h *House) (files map[string]bool, last error) {
	files = map[string]bool{}
	folders := map[string]bool{}
	for _, name := range h.Files {
		if abs, err := filepath.Abs(name); err == nil {
			files[abs] = true
			folders[filepath.Dir(abs)] = true
		}
	}
	for _, old := range w.WatchList() {
		delete(folders, old)
	}
	for folder := range folders {
		if err := w.Add(folder); err != nil {
			last = err
		}
	}
	return files, last
}
