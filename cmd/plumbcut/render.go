package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"runtime"
	"sync"
)

// document is one file to be written: its name without a folder, and what
// writes its bytes.
type document struct {
	name   string
	render func(io.Writer) error
}

// file is a document rendered.
type file struct {
	name string
	data []byte
}

// renderAll renders the documents on all cores at once. The result has their
// order, whichever is ready first, so it does not depend on the machine.
func renderAll(docs []document) ([]file, error) {
	files := make([]file, len(docs))
	errs := make([]error, len(docs))
	next := make(chan int, len(docs))
	for i := range docs {
		next <- i
	}
	close(next)
	var workers sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(docs)) {
		workers.Go(func() {
			for i := range next {
				files[i], errs[i] = docs[i].bytes()
			}
		})
	}
	workers.Wait()
	return files, errors.Join(errs...)
}

func (d document) bytes() (file, error) {
	var b bytes.Buffer
	if err := d.render(&b); err != nil {
		return file{}, fmt.Errorf("cannot draw %s: %w", d.name, err)
	}
	return file{d.name, b.Bytes()}, nil
}
