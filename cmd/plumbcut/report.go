package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"

	"plumbcut/draw"
	"plumbcut/geom/frame"
	"plumbcut/sheets"
)

// report is what a finished drawing run tells its user: what it wrote, and
// what to look at.
type report struct {
	drawn
	job      *frame.Job
	request  request
	name     string // of the job
	dir      string
	removed  []string
	warnings int // doubts about the job
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
	line(templatesName(r.name), "full-size templates: print at 100 %, and read its first page")
	if whole := r.templates.Whole.Sheets; len(whole) > 0 {
		line(templateName(r.name, whole[0])+" to "+whole[len(whole)-1].Number, "one whole template each")
	}
	var lists []string
	for _, l := range sheets.ListNames() {
		lists = append(lists, listName(r.name, l))
	}
	line(strings.Join(lists, ", "), "lists for a spreadsheet")
	const few = 4
	switch n := len(r.removed); {
	case n > few:
		fmt.Fprintf(&b, "  removed from an earlier run: %s … %s, %d in all\n", r.removed[0], r.removed[n-1], n)
	case n > 0:
		fmt.Fprintf(&b, "  removed from an earlier run: %s\n", strings.Join(r.removed, ", "))
	}
	if r.leftFlat() {
		fmt.Fprintf(&b, "  %s is from an earlier run; --flat draws it anew\n", flatName(r.name))
	}
	switch r.warnings {
	case 0:
		b.WriteString("Nothing is doubtful. Read the cautions on the cover before anything is bought or cut.\n")
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

// audit holds the model, its sheets and its templates to the rules of the house.
// Faults make a drawing untrue: two timbers in one place, a figure that is not the
// model's, a cut line beside the cut. It finds none unless this program is wrong,
// and nothing is drawn then. Blemishes make it hard to read; they are told, and
// never a reason to withhold drawings.
func audit(f *frame.Frame, d drawn) (faults, blemishes []string) {
	fault := func(format string, args ...any) {
		const ours = "this is a fault of plumbcut, not of the job"
		faults = append(faults, fmt.Sprintf("%s: %s; %s", f.Job.File, fmt.Sprintf(format, args...), ours))
	}
	blemish := func(x draw.Finding) {
		blemishes = append(blemishes, fmt.Sprintf("%s: hard to read: %v", f.Job.File, x))
	}
	var model []frame.Finding
	var sheets, untrue, unclear []draw.Finding
	var all sync.WaitGroup
	all.Go(func() { sheets = d.set.Audit(f.Job.Format()) })
	all.Go(func() { untrue, unclear = d.templates.Audit(f.Job.Format()) })
	all.Go(func() { model = f.Audit() })
	all.Wait()
	for _, x := range model {
		fault("the model is not sound (%s): %s", x.Rule, x.What)
	}
	for _, x := range sheets {
		switch x.Rule {
		case draw.RuleDimFigure, draw.RuleDimLength, draw.RuleDimPlace:
			fault("a dimension is not true: %v", x)
		default:
			blemish(x)
		}
	}
	for _, x := range untrue {
		fault("a template is not true: %v", x)
	}
	for _, x := range unclear {
		x.Sheet = "of templates " + x.Sheet
		blemish(x)
	}
	return faults, blemishes
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
