package main

import (
	"errors"
	"fmt"
	"sync"

	"plumbcut/draw"
	"plumbcut/geom/frame"
	"plumbcut/geom/frame/keys"
	"plumbcut/sheets"
	"plumbcut/sheets/template"
)

// fewFindings is how many findings of one kind draw tells one by one; check
// tells all.
const fewFindings = 3

// firstFew cuts findings short for draw, and says so.
func firstFew(lines []string) []string {
	if len(lines) <= fewFindings {
		return lines
	}
	return append(lines[:fewFindings:fewFindings],
		fmt.Sprintf("… and %d more; plumbcut check lists them all", len(lines)-fewFindings))
}

// draw carries out "plumbcut draw".
func (c console) draw(r request) int {
	f, err := c.makeFrame(r)
	if err != nil {
		return c.failed(err)
	}
	d, err := makeAll(f, r)
	if err != nil {
		return c.failed(err)
	}
	verdict := sync.OnceValues(func() (faults, blemishes []string) { return audit(f, d) })
	go verdict() // while the disk takes what it is given
	name, dir := jobName(r.job), r.folder()
	docs := documents(name, d, r)
	removed, err := deliver(dir, docs, staleSheets(name, docs), func() error {
		if faults, _ := verdict(); len(faults) > 0 {
			return errUntrue
		}
		return nil
	})
	faults, unclear := verdict()
	if len(faults) > 0 {
		c.tell(firstFew(faults))
		return exitJob
	}
	if err != nil {
		return c.failed(err)
	}
	doubtful := doubts(f)
	c.tell(doubtful)
	c.tell(firstFew(unclear))
	fmt.Fprint(c.out, report{job: f.Job, drawn: d, name: name, dir: dir, request: r,
		removed: removed, warnings: len(doubtful)})
	return exitFine
}

// errUntrue keeps drawings that are not true from being put in place.
var errUntrue = errors.New("the drawings are not true")

// check carries out "plumbcut check".
func (c console) check(r request) int {
	f, err := c.makeFrame(r)
	if err != nil {
		return c.failed(err)
	}
	d, err := makeAll(f, r)
	if err != nil {
		return c.failed(err)
	}
	doubtful := doubts(f)
	faults, unclear := audit(f, d)
	c.tell(doubtful)
	c.tell(faults)
	c.tell(unclear)
	fmt.Fprintf(c.out, "%s: %s, %s, %s; %s, %s, %s.\n", f.Job.File,
		count(len(f.Members), "member", "members"), count(len(d.set.Sheets), "sheet", "sheets"),
		count(len(d.templates.Pages.Sheets), "page of templates", "pages of templates"),
		count(len(faults), "fault", "faults"), count(len(doubtful), "warning", "warnings"),
		count(len(unclear), "place that is hard to read", "places that are hard to read"))
	if len(faults) > 0 {
		return exitJob
	}
	return exitFine
}

// figures carries out "plumbcut figures".
func (c console) figures(r request) int {
	f, err := c.makeFrame(r)
	if err != nil {
		return c.failed(err)
	}
	text, err := f.Figures().JSON()
	if err != nil {
		return c.failed(err)
	}
	c.tell(doubts(f))
	if _, err := c.out.Write(text); err != nil {
		return c.failed(fmt.Errorf("cannot print the figures: %s", inWords(err, adviceWriting)))
	}
	return exitFine
}

// makeFrame reads and builds the job of a request.
func (c console) makeFrame(r request) (*frame.Frame, error) {
	text, err := readJob(r.job, c.in, frame.MaxFile)
	if err != nil {
		return nil, err
	}
	job, err := frame.Read(shownName(r.job), text)
	if err != nil {
		return nil, err
	}
	if err := lettering(job); err != nil {
		return nil, err
	}
	return frame.Build(job)
}

// makeAll draws a frame in memory, the sheets beside the templates.
func makeAll(f *frame.Frame, r request) (drawn, error) {
	var d drawn
	var errs [3]error
	var all sync.WaitGroup
	all.Go(func() { d.set, errs[0] = sheets.Make(f) })
	all.Go(func() { d.templates, errs[1] = template.Make(f) })
	all.Go(func() { d.lists, errs[2] = sheets.Lists(f) })
	all.Wait()
	for _, err := range errs {
		if err != nil {
			return drawn{}, err
		}
	}
	for _, set := range []*draw.Set{d.set, d.templates.Pages, d.templates.Whole} {
		set.Meta.JobFile = attachedName(r.job)
	}
	return d, nil
}

// lettering refuses words that the drawings could not show, each at its place
// in the job file. Read cannot: it does not know what the words are set in.
func lettering(job *frame.Job) error {
	var errs frame.Errors
	job.Texts(func(path, text string) {
		if r, missing := draw.MissingGlyph(text); missing {
			errs = append(errs, job.Errorf(ruleLettering, path,
				"the lettering of the drawings has no %q (in %s); write it with the letters of European languages, accents and macrons included",
				r, keys.Quote(text)))
		}
	})
	return errs.Err()
}

// ruleLettering is the rule that a text with such a character breaks.
const ruleLettering frame.Rule = "lettering"
