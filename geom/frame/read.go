package frame

import (
	"plumbcut/geom/frame/keys"
	"plumbcut/geom/measure"
)

// MaxFile is the greatest length of a job file in bytes. Who reads a file into
// memory need read no more than one byte beyond it.
const MaxFile = keys.MaxSize

// Read reads the text of a job file and fills in every default. The name of
// the file is for errors, which are Errors: all that are to be found without
// building the frame, in the order of the file.
func Read(file string, text []byte) (*Job, error) {
	doc, err := keys.Parse(file, text)
	if err != nil {
		return nil, err
	}
	j := &Job{File: file, Text: text}
	if doc.Value("units") == "feet-inches" {
		j.Units = FeetInches
	}
	d := newDraft(j)
	var errs Errors
	j.given, errs = doc.Decode(d.fields(), j.Units)
	c := filler{draft: d, errs: errs}
	if len(errs) == 0 {
		c.fill()
	}
	c.check()
	if err := c.errs.Err(); err != nil {
		return nil, err
	}
	j.texts = d.texts()
	return j, nil
}

// Texts calls a function with every free text of the job and its path, in a
// fixed order, so that who prints them can refuse what a font lacks at its
// place in the file.
func (j *Job) Texts(do func(path, text string)) {
	for _, t := range j.texts {
		do(t.path, t.text)
	}
}

// Habits are the keys that the file leaves out and whose defaults are common
// practice without a source. Drawings that rest on them ask for confirmation.
func (j *Job) Habits() []keys.Habit { return j.habits }

// Format is how the job's drawings give figures.
func (j *Job) Format() measure.Format { return measure.Format{Units: j.Units} }

// Schema is the JSON Schema of a job file, for editors.
func Schema() []byte {
	return keys.Schema(newDraft(new(Job)).fields(), "Plumbcut job file", "One timber pergola or lean-to against a house wall. "+
		"Lengths: a bare number is in millimetres, or in inches where units is feet-inches; or in words, like 2.4 m or 11' 4 3/8\". "+
		"'Along' is to the right along the wall, seen standing outside and facing the house; 'out' is away from the outer face of the cladding.")
}

// KeyReference lists every key of a job file for people, in Markdown.
func KeyReference() string { return keys.Reference(newDraft(new(Job)).fields()) }
