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

// renderAll renders the documents on all cores at once and hands over each as
// soon as it is ready, in no order. Of several errors the first in the order of
// documents comes first, whichever was met first.
func renderAll(docs []document, ready func(i int, data []byte)) error {
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
				data, err := docs[i].bytes()
				if errs[i] = err; err == nil {
					ready(i, data)
				}
			}
		})
	}
	workers.Wait()
	return errors.Join(errs...)
}

func (d document) bytes() ([]byte, error) {
	var b bytes.Buffer
	if err := d.render(&b); err != nil {
		return nil, fmt.Errorf("cannot draw %s: %w", d.name, err)
	}
	return b.Bytes(), nil
}
