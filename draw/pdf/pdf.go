// Package pdf writes a set of drawings as one PDF file: a page for each sheet
// at its true size, with words that can be searched, layers that can be
// switched, a bookmark and a page label for each sheet, links between sheets,
// and the job file carried inside.
//
// The same set gives the same bytes: no clock, and an identifier that is
// computed from the content.
//
//	Set ─▶ board (pages, by a PDF library) ─▶ finish (what the library lacks) ─▶ file
//
// Left out: colour, pictures, passwords, signatures, and any claim to an
// archive profile, which nothing here could verify.
package pdf

import (
	"fmt"
	"io"

	"plumbcut/draw"
)

// Options chooses between the ways of writing a set.
type Options struct {
	// Flat leaves out layers and the job file, for viewers and print shops
	// that stumble over them.
	Flat bool
}

// Write writes the set. It returns an error, and writes nothing, when the set
// does not pass its Check.
func Write(w io.Writer, set *draw.Set, opt Options) error {
	if err := set.Check(); err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	b, err := newBoard(set, opt)
	if err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	for _, s := range set.Sheets {
		b.page(s)
	}
	raw, err := b.bytes()
	if err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	whole, err := finish(raw, set, opt)
	if err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	_, err = w.Write(whole)
	return err
}
