package main

import (
	"bytes"
	"io"
	"path/filepath"
	"testing"
)

// BenchmarkDraw draws the demo as the program does, from the file to the files:
// all sheets, lists and templates, PDF and SVG, flushed to the disk.
func BenchmarkDraw(b *testing.B) {
	job := filepath.Join(root, "examples", demo, demo+".yaml")
	dir := filepath.Join(b.TempDir(), "drawings")
	for b.Loop() {
		var told bytes.Buffer
		if got := run([]string{"draw", "-o", dir, job}, nil, io.Discard, &told); got != exitFine {
			b.Fatalf("exit status %d: %s", got, &told)
		}
	}
}
