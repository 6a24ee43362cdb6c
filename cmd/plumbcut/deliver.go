package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"sync"
)

// A delivery puts a set of files into a folder, all or none:
//
//	lock the folder → render all into a staging folder in it → ask whether they
//	may be handed over → keep a second name of each earlier file there → rename
//	the new ones into place
//
// Every rename replaces one file at a stroke, so each file is always whole. If
// one fails, those before it are put back. A run that is killed leaves at most
// a staging folder, which the next run clears away.
type delivery struct {
	dir   string
	stage string // folder for what is not in place yet
	undo  []func() error
}

// stagePrefix begins the name of a staging folder.
const stagePrefix = ".plumbcut-"

// earlierPrefix begins the second name of an earlier file in the staging
// folder. No drawing's name starts with it: a job's name is never empty.
const earlierPrefix = ".earlier-"

// deliver renders documents into dir, which it makes if need be, and removes the
// regular files there whose names are stale. It returns what it removed. On an
// error, one of approve's too, the folder is as it was.
func deliver(dir string, docs []document, stale func(name string) bool, approve func() error) (removed []string, err error) {
	made, err := makeFolder(dir)
	if err != nil {
		return nil, err
	}
	defer func() {
		if err != nil {
			removeEmpty(made)
		}
	}()
	unlock, alone := lockFolder(dir)
	defer unlock()
	if alone {
		clearStages(dir)
	}
	d := delivery{dir: dir}
	for _, doc := range docs {
		if err := d.mayReplace(doc.name); err != nil {
			return nil, err
		}
	}
	d.stage, err = os.MkdirTemp(dir, stagePrefix)
	if err != nil {
		return nil, cannotWrite(dir, err)
	}
	if err = d.write(docs); err == nil {
		err = approve()
	}
	if err == nil {
		removed, err = d.swap(docs, stale)
	}
	if err != nil {
		if back := d.putBack(); back != nil {
			return nil, errors.Join(err, fmt.Errorf("earlier drawings could not be put back; they are in %s: %w", d.stage, back))
		}
		removed = nil
	}
	os.RemoveAll(d.stage) // what stays behind is cleared by the next run
	syncFolder(dir)
	return removed, err
}

// mayReplace says why a drawing may not take the place that is meant for it.
func (d delivery) mayReplace(name string) error {
	target := filepath.Join(d.dir, name)
	info, err := os.Lstat(target)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return cannotWrite(target, err)
	case info.Mode()&fs.ModeSymlink != 0:
		return fmt.Errorf("%s is a link to another place, and drawings are never written through a link; remove it, or choose another folder with -o", target)
	case !info.Mode().IsRegular():
		return fmt.Errorf("%s is not an ordinary file; move it away, or choose another folder with -o", target)
	case info.Mode().Perm()&0o200 == 0:
		return fmt.Errorf("%s is write-protected; allow writing, or choose another folder with -o", target)
	}
	return nil
}

// write renders the documents into the staging folder and waits until the disk
// has them. Each goes to the disk while others are rendered, side by side since
// a disk flushes many files nearly as fast as one.
func (d delivery) write(docs []document) error {
	errs := make([]error, len(docs))
	var disk sync.WaitGroup
	err := renderAll(docs, func(i int, data []byte) {
		disk.Go(func() { errs[i] = writeSynced(filepath.Join(d.stage, docs[i].name), data) })
	})
	disk.Wait()
	if err != nil {
		return err
	}
	for _, err := range errs {
		if err != nil {
			return cannotWrite(d.dir, err) // one full disk is told once
		}
	}
	return nil
}

func writeSynced(name string, data []byte) error {
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	return errors.Join(err, f.Sync(), f.Close())
}

// swap brings the new files into place and moves stale ones out of it.
func (d *delivery) swap(docs []document, stale func(string) bool) (removed []string, err error) {
	for _, doc := range docs {
		if err := d.replace(doc.name); err != nil {
			return nil, cannotWrite(filepath.Join(d.dir, doc.name), err)
		}
	}
	entries, err := os.ReadDir(d.dir)
	if err != nil {
		return nil, cannotWrite(d.dir, err)
	}
	for _, e := range entries {
		if !e.Type().IsRegular() || !stale(e.Name()) {
			continue
		}
		place, kept := d.places(e.Name())
		if err := os.Rename(place, kept); err != nil {
			return nil, cannotWrite(place, err)
		}
		d.undo = append(d.undo, func() error { return os.Rename(kept, place) })
		removed = append(removed, e.Name())
	}
	return removed, nil
}

// places are where a file belongs and where its earlier self is kept.
func (d delivery) places(name string) (place, kept string) {
	return filepath.Join(d.dir, name), filepath.Join(d.stage, earlierPrefix+name)
}

// replace brings one new file into place, and notes how to go back.
func (d *delivery) replace(name string) error {
	place, kept := d.places(name)
	back := func() error { return os.Rename(kept, place) }
	switch err := keep(place, kept); {
	case errors.Is(err, fs.ErrNotExist):
		back = func() error { return os.Remove(place) }
	case err != nil:
		return err
	}
	if err := os.Rename(filepath.Join(d.stage, name), place); err != nil {
		return err
	}
	d.undo = append(d.undo, back)
	return nil
}

// keep gives a file a second name, or a copy where the disk knows no second
// names.
func keep(place, kept string) error {
	err := os.Link(place, kept)
	if err == nil || errors.Is(err, fs.ErrNotExist) {
		return err
	}
	data, err := os.ReadFile(place)
	if err != nil {
		return err
	}
	return writeSynced(kept, data)
}

// putBack undoes what swap did, last first.
func (d delivery) putBack() error {
	var errs []error
	for i := len(d.undo) - 1; i >= 0; i-- {
		errs = append(errs, d.undo[i]())
	}
	return errors.Join(errs...)
}

// makeFolder makes dir and the folders above it, and returns those that were
// not there, deepest first.
func makeFolder(dir string) (made []string, err error) {
	for d := filepath.Clean(dir); ; d = filepath.Dir(d) {
		if _, err := os.Stat(d); !errors.Is(err, fs.ErrNotExist) {
			break
		}
		made = append(made, d)
	}
	if err := os.MkdirAll(dir, 0o777); err != nil {
		removeEmpty(made)
		return nil, cannotWrite(dir, err)
	}
	return made, nil
}

// removeEmpty removes folders, deepest first, as far as they are empty.
func removeEmpty(dirs []string) {
	for _, d := range dirs {
		if os.Remove(d) != nil {
			return
		}
	}
}

// clearStages removes what killed runs left. It may run only under the lock.
func clearStages(dir string) {
	entries, err := os.ReadDir(dir)
	if err != nil {
		return // the same trouble is met, and told, when staging
	}
	for _, e := range entries {
		if e.IsDir() && strings.HasPrefix(e.Name(), stagePrefix) {
			os.RemoveAll(filepath.Join(dir, e.Name()))
		}
	}
}

// syncFolder makes renames last through a power cut, where the system can.
func syncFolder(dir string) {
	if f, err := os.Open(dir); err == nil {
		f.Sync()
		f.Close()
	}
}
