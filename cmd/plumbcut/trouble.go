package main

import (
	"errors"
	"fmt"
	"io/fs"
	"syscall"
)

// cannotWrite says in words why a file or folder could not be written.
func cannotWrite(place string, err error) error {
	return fmt.Errorf("cannot write to %s: %s; the drawings there are as they were", place, inWords(err, adviceWriting))
}

// cannotRead says in words why the job file could not be read.
func cannotRead(name string, err error) error {
	return fmt.Errorf("cannot read %s: %s", name, inWords(err, adviceReading))
}

// The kinds of trouble that a disk gives. What helps depends on whether one
// was reading or writing.
type trouble int

const (
	unknown trouble = iota
	noPermission
	notThere
	notFolder
	isFolder
	diskFull
	diskLocked
	inUse
)

// advice is what to say of each trouble.
type advice map[trouble]string

var adviceWriting = advice{
	noPermission: "you have no permission to write there; choose another folder with -o",
	notThere:     "the folder is gone; run the command again",
	notFolder:    "part of the way there is a file, not a folder; choose another folder with -o",
	isFolder:     "a folder is in the way; move it, or choose another folder with -o",
	diskFull:     "the disk is full; make room, or choose another folder with -o",
	diskLocked:   "the disk is write-protected; choose another folder with -o",
	inUse:        "another program has the file open; close it and run the command again",
}

var adviceReading = advice{
	noPermission: "you have no permission to read it",
	notThere:     "there is no such file",
	notFolder:    "part of the way there is a file, not a folder",
	isFolder:     "it is a folder; name a job file in it",
}

// inWords is the advice for an error, or the system's own word for it.
func inWords(err error, say advice) string {
	if words := say[kindOf(err)]; words != "" {
		return words
	}
	var path *fs.PathError
	if errors.As(err, &path) {
		return path.Err.Error()
	}
	return err.Error()
}

func kindOf(err error) trouble {
	switch {
	case errors.Is(err, fs.ErrPermission):
		return noPermission
	case errors.Is(err, fs.ErrNotExist):
		return notThere
	case errors.Is(err, syscall.ENOTDIR):
		return notFolder
	case errors.Is(err, syscall.EISDIR):
		return isFolder
	case errors.Is(err, syscall.ENOSPC), errors.Is(err, syscall.EDQUOT), errors.Is(err, syscall.EFBIG):
		return diskFull
	case errors.Is(err, syscall.EROFS):
		return diskLocked
	case errors.Is(err, syscall.EBUSY):
		return inUse
	}
	return unknown
}
