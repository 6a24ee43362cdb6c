package draw

import (
	"errors"
	"fmt"
	"math"
	"time"
	"unicode/utf8"

	"plumbcut/geom"
)

// farthest bounds every coordinate, mm from the corner of the sheet. It is far
// off any paper; what lies beyond is a slip in the drawing code, and a file
// format could not hold it.
const farthest = 1e5

// Check reports everything that would make a file of the set wrong or
// unreadable: numbers that are none, characters that the lettering lacks,
// links to sheets that are not there. Writers call it first and write nothing
// if it fails.
func (set *Set) Check() error {
	if len(set.Sheets) == 0 {
		return errors.New("there are no sheets")
	}
	numbers := map[string]bool{}
	for _, s := range set.Sheets {
		if numbers[s.Number] {
			return fmt.Errorf("sheet %s: the number is used twice", s.Number)
		}
		numbers[s.Number] = true
	}
	errs := []error{set.Meta.Check()}
	for _, s := range set.Sheets {
		errs = append(errs, s.Check())
		for _, item := range s.Items {
			if t := item.Text; t != nil && t.Link != "" && !numbers[t.Link] {
				errs = append(errs, fmt.Errorf("sheet %s: text %q leads to sheet %s, which is not in the set", s.Number, t.String, t.Link))
			}
		}
	}
	return errors.Join(errs...)
}

// Check is the part of Set.Check that concerns the properties of the file.
func (m Meta) Check() error {
	_, err := m.Day()
	errs := []error{err}
	for _, f := range [...][2]string{
		{"title", m.Title}, {"subject", m.Subject}, {"author", m.Author}, {"name of the job file", m.JobFile},
	} {
		if r, bad := unprintable(f[1]); bad {
			errs = append(errs, fmt.Errorf("%s %q: character %U cannot be printed", f[0], f[1], r))
		}
	}
	return errors.Join(errs...)
}

// Day is the date of the job at midnight; 1 January 2000 if it has none, so
// that a file without a date is the same every day.
func (m Meta) Day() (time.Time, error) {
	if m.Date == "" {
		return time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC), nil
	}
	day, err := time.Parse(time.DateOnly, m.Date)
	if err != nil {
		return day, fmt.Errorf("date %q: want year-month-day, such as 2025-03-14", m.Date)
	}
	return day, nil
}

// unprintable finds a character that a file's properties cannot hold.
func unprintable(s string) (rune, bool) {
	for _, r := range s {
		if r < ' ' || r >= 0x7F && r < 0xA0 || r >= 0xFFFE || r == utf8.RuneError {
			return r, true
		}
	}
	return 0, false
}

// Check is the part of Set.Check that concerns one sheet.
func (s *Sheet) Check() error {
	var errs []error
	fail := func(format string, args ...any) {
		errs = append(errs, fmt.Errorf("sheet %s: %s", s.Number, fmt.Sprintf(format, args...)))
	}
	if !(s.Paper.Width > 0 && s.Paper.Height > 0 && s.Paper.Width < farthest && s.Paper.Height < farthest) {
		fail("paper %g × %g mm cannot be", s.Paper.Width, s.Paper.Height)
	}
	for _, name := range [...]string{s.Number, s.Title} {
		if r, bad := unprintable(name); bad {
			fail("title %q: character %U cannot be printed", name, r)
		}
	}
	for i, item := range s.Items {
		switch {
		case item.Path != nil && item.Text == nil:
			if why := item.Path.fault(); why != "" {
				fail("mark %d (%s): %s", i, item.Path.ID, why)
			}
		case item.Text != nil && item.Path == nil:
			if why := item.Text.fault(); why != "" {
				fail("text %q: %s", item.Text.String, why)
			}
		default:
			fail("mark %d must be a path or a text", i)
		}
	}
	return errors.Join(errs...)
}

// fault says what is wrong with the path; empty if nothing is.
func (p *Path) fault() string {
	st := p.Style
	if st.Layer < 0 || st.Layer >= layerCount || st.Pen < Narrow || st.Pen > Wide || st.Dash < 0 || st.Dash >= dashCount {
		return "no such layer, pen or dash"
	}
	if p.Fill != nil && !(*p.Fill >= 0 && *p.Fill <= 1) {
		return "a tone lies between 0 and 1"
	}
	for i, seg := range p.Segs {
		if i == 0 && seg.Op != Move {
			return "a path starts with a move"
		}
		if !near(seg.To) {
			return fmt.Sprintf("point %v is off every paper", seg.To)
		}
		if seg.Op == Curve && !drawable(seg.Arc) {
			return fmt.Sprintf("arc %+v is off every paper", seg.Arc)
		}
	}
	return ""
}

// fault says what is wrong with the text; empty if nothing is.
func (t *Text) fault() string {
	if r, missing := MissingGlyph(t.String); missing {
		return fmt.Sprintf("the lettering has no character %U", r)
	}
	switch {
	case t.Layer < 0 || t.Layer >= layerCount:
		return "no such layer"
	case !near(t.At) || math.IsNaN(t.Turn) || math.IsInf(t.Turn, 0):
		return "it stands off every paper"
	case !(t.Height > 0 && t.Height < farthest):
		return fmt.Sprintf("height %g mm cannot be", t.Height)
	}
	return ""
}

// near is false for coordinates that are not numbers, too.
func near(p geom.Pt) bool { return math.Abs(p.X) < farthest && math.Abs(p.Y) < farthest }

func drawable(a geom.Arc) bool {
	return near(a.Centre) && near(a.Major) && math.Abs(a.Ratio) < farthest &&
		math.Abs(a.Start) < farthest && math.Abs(a.End) < farthest
}
