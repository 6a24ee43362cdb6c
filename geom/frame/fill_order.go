package frame

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"plumbcut/geom/frame/keys"
	"plumbcut/geom/measure"
)

// The lengths that are taken to be sold where the job says nothing: steps of
// 0.6 m, or of 2 ft. Common practice, no source; what a yard has differs.
const (
	metricLengths   = "2.4, 3, 3.6, 4.2, 4.8, 5.4 and 6 m"
	imperialLengths = "8, 10, 12, 14, 16 and 20 ft"
)

// defaultLengths are those in numbers.
func defaultLengths(units UnitSystem) []StockLength {
	lengths, unit := []float64{2.4, 3, 3.6, 4.2, 4.8, 5.4, 6}, 1000.0
	if units == FeetInches {
		const foot = 12 * measure.Inch
		lengths, unit = []float64{8, 10, 12, 14, 16, 20}, foot
	}
	var out []StockLength
	for _, l := range lengths {
		out = append(out, StockLength{Length: l * unit})
	}
	return out
}

// wideBatten is the width beyond which a batten takes two screws at each
// crossing. Common practice, no source.
const wideBatten = 70

// fillOrder sets what the lists need to know.
func (f *filler) fillOrder() {
	s := &f.Stock
	if !f.Given("stock.lengths") {
		s.Lengths = defaultLengths(f.Units)
		words := metricLengths
		if f.Units == FeetInches {
			words = imperialLengths
		}
		f.habits = append(f.habits, keys.Habit{Path: "stock.lengths", Value: words})
	}
	f.fillLengths("stock.lengths", s.Lengths)
	for i := range s.Sections {
		f.fillLengths(fmt.Sprintf("stock.sections[%d].lengths", i), s.Sections[i].Lengths)
	}
	f.fillScrews("battens", f.Battens.Section, &f.Battens.Screws)
	f.fillScrews("laths", f.Laths.Section, &f.Laths.Screws)
	f.fillScrews("slats", f.Slats.Section, &f.Slats.Screws)
	f.fillScrews("slats.cleats", f.Slats.Cleats.Section, &f.Slats.Cleats.Screws)
}

// fillScrews sets how many screws hold a stick where it crosses another.
func (f *filler) fillScrews(key string, s Section, screws *BattenScrews) {
	if s.Depth == 0 || screws.Each > 0 {
		return
	}
	screws.Each = 1
	if s.Width > wideBatten {
		screws.Each = 2
	}
	f.habits = append(f.habits, keys.Habit{Path: key + ".screws.each", Value: fmt.Sprint(screws.Each)})
}

// fillLengths notes which lengths have a price and sorts them.
func (f *filler) fillLengths(path string, lengths []StockLength) {
	for i := range lengths {
		lengths[i].Priced = f.Given(fmt.Sprintf("%s[%d].price", path, i))
	}
	slices.SortStableFunc(lengths, func(a, b StockLength) int { return cmp.Compare(a.Length, b.Length) })
}

// checkStock sees that every section in the stock is one of the job's, once.
func (f *filler) checkStock() {
	var sold, used []Section
	var names []string
	for _, m := range []struct {
		path string
		s    Section
	}{
		{"plate.section", f.Plate.Section}, {"beam.section", f.Beam.Section}, {"posts.section", f.Posts.Section},
		{"rafters.section", f.Rafters.Section}, {"battens.section", f.Battens.Section}, {"laths.section", f.Laths.Section},
		{"slats.section", f.Slats.Section}, {"slats.cleats.section", f.Slats.Cleats.Section},
	} {
		if f.given.Sound(m.path) {
			used = append(used, m.s)
			names = append(names, f.Format().Size(m.s.Depth, m.s.Width))
		} else if f.Given(m.path) {
			return // an error of its own
		}
	}
	if p := f.Plate.Packer; p.Thickness > 0 {
		used = append(used, Section{Depth: p.Thickness, Width: p.Width})
	}
	for _, p := range f.Posts.At {
		used = append(used, Section{Depth: p.Packer.Thickness, Width: p.Packer.Width})
	}
	for i, s := range f.Stock.Sections {
		path := fmt.Sprintf("stock.sections[%d].section", i)
		if !f.given.Sound(path) {
			continue
		}
		size := f.Format().Size(s.Section.Depth, s.Section.Width)
		switch {
		case slices.ContainsFunc(sold, s.Section.same):
			f.fault(keys.RuleDuplicate, path, "the section %s stands twice; keep one", size)
		case !slices.ContainsFunc(used, s.Section.same):
			f.fault(RuleStock, path, "no member has the section %s; write that of a member, such as %s, or take it out", size, strings.Join(slices.Compact(names), ", "))
		}
		sold = append(sold, s.Section)
	}
}
