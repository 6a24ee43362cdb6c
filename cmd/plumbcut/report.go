package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"plumbcut/draw"
	"plumbcut/geom/frame"
)

// report is what a finished drawing run tells its user: what it wrote, and
// what to look at.
type report struct {
	job      *frame.Job
	set      *draw.Set
	request  request
	name     string // of the job
	dir      string
	removed  []string
	warnings int
}

// String is a few lines, each about one kind of file.
func (r report) String() string {
	var b strings.Builder
	first, last := r.set.Sheets[0].Number, r.set.Sheets[len(r.set.Sheets)-1].Number
	fmt.Fprintf(&b, "%s: drew %s into %s\n", r.job.File, count(len(r.set.Sheets), "sheet", "sheets"), r.dir)
	line := func(files, what string) { fmt.Fprintf(&b, "  %s  (%s)\n", files, what) }
	line(pdfName(r.name), "the whole set, to print or send")
	if r.request.flat {
		line(flatName(r.name), "the same without layers or attachment")
	}
	span := func(ext string) string {
		if first == last {
			return fmt.Sprintf("%s-%s.%s", r.name, first, ext)
		}
		return fmt.Sprintf("%s-%s.%s to %s", r.name, first, ext, last)
	}
	line(span("svg"), "one drawing a sheet")
	if r.request.png {
		line(span("png"), "one picture a sheet")
	}
	if len(r.removed) > 0 {
		fmt.Fprintf(&b, "  removed from an earlier run: %s\n", strings.Join(r.removed, ", "))
	}
	if r.leftFlat() {
		fmt.Fprintf(&b, "  %s is from an earlier run; --flat draws it anew\n", flatName(r.name))
	}
	switch r.warnings {
	case 0:
		b.WriteString("No warnings. Read the cautions on the cover before anything is bought or cut.\n")
	case 1:
		b.WriteString("Look first at the warning, and at the cautions on the cover.\n")
	default:
		fmt.Fprintf(&b, "Look first at the %d warnings, and at the cautions on the cover.\n", r.warnings)
	}
	return b.String()
}

// leftFlat reports whether a flat copy lies there that this run did not write.
func (r report) leftFlat() bool {
	if r.request.flat {
		return false
	}
	_, err := os.Lstat(filepath.Join(r.dir, flatName(r.name)))
	return err == nil
}

// doubts are what can be built but is doubtful, each a line with its place in
// the job file. The drawings carry them too.
func doubts(f *frame.Frame) (lines []string) {
	for _, w := range f.Warnings {
		lines = append(lines, fmt.Sprintf("%s:%d:%d: warning: %s",
			f.Job.File, max(w.Pos.Line, 1), max(w.Pos.Column, 1), w.Message))
	}
	return lines
}

// modelFaults are what the audit of the model finds. It finds nothing unless
// this program is at fault, so nothing is drawn from such a model.
func modelFaults(f *frame.Frame) (lines []string) {
	for _, x := range f.Audit() {
		lines = append(lines, fmt.Sprintf("%s: the model is not sound (%s): %s; this is a fault of plumbcut, not of the job",
			f.Job.File, x.Rule, x.What))
	}
	return lines
}

// blemishes are what the audit of the sheets finds: places that a draughtsman
// would not sign. They are never a reason to withhold drawings.
func blemishes(f *frame.Frame, set *draw.Set) (lines []string) {
	for _, x := range set.Audit(f.Job.Format()) {
		lines = append(lines, fmt.Sprintf("%s: warning: %v", f.Job.File, x))
	}
	return lines
}

// tell writes lines to where errors go, so that what is asked for stays alone
// on standard output.
func (c console) tell(lines []string) {
	for _, l := range lines {
		fmt.Fprintln(c.err, l)
	}
}

// count is a number with its noun, as in "1 sheet" or "no sheets".
func count(n int, one, many string) string {
	switch n {
	case 0:
		return "no " + many
	case 1:
		return "1 " + one
	}
	return fmt.Sprint(n, " ", many)
}
