package main

import (
	"io"
	"os"
	"path/filepath"
	"strings"
)

// jobName is what drawings are named after: the job file's own name without
// its folder and its .yaml or .yml. Any other ending stays, so that a drawing
// can never take the job file's own name.
func jobName(file string) string {
	if file == fromStdin {
		return stdinName
	}
	base := filepath.Base(file)
	ext := filepath.Ext(base)
	if e := strings.ToLower(ext); e != ".yaml" && e != ".yml" {
		return base
	}
	if name := strings.TrimSuffix(base, ext); name != "" {
		return name
	}
	return stdinName
}

// stdinName names a job that has no name of its own.
const stdinName = "job"

// shownName is how errors name the job file.
func shownName(file string) string {
	if file == fromStdin {
		return "stdin"
	}
	return file
}

// attachedName is what the job file is called inside the PDF: its own name
// without its folder, which is nobody's business, and without what a file's
// properties cannot hold.
func attachedName(file string) string {
	if file == fromStdin {
		return stdinName + ".yaml"
	}
	return strings.Map(func(r rune) rune {
		const lastPlain = 0xFFFD // beyond lie what PDF's older strings cannot hold, and broken UTF-8
		if r < ' ' || r >= 0x7F && r < 0xA0 || r >= lastPlain {
			return '_'
		}
		return r
	}, filepath.Base(file))
}

// folder is where the drawings of a request go.
func (r request) folder() string {
	if r.dir != "" {
		return r.dir
	}
	dir := "."
	if r.job != fromStdin {
		dir = filepath.Dir(r.job)
	}
	return filepath.Join(dir, jobName(r.job)+"-drawings")
}

// readJob reads a job's text from its file or from standard input, no more of
// it than limit bytes and one.
func readJob(name string, stdin io.Reader, limit int64) ([]byte, error) {
	if name == fromStdin {
		text, err := io.ReadAll(io.LimitReader(stdin, limit+1))
		if err != nil {
			return nil, cannotRead("standard input", err)
		}
		return text, nil
	}
	f, err := os.Open(name)
	if err != nil {
		return nil, cannotRead(name, err)
	}
	defer f.Close()
	text, err := io.ReadAll(io.LimitReader(f, limit+1))
	if err != nil {
		return nil, cannotRead(name, err)
	}
	return text, nil
}
