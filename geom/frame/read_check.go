package frame

import (
	"fmt"
	"strings"

	"plumbcut/geom/frame/keys"
)

// check compares values that must stand in some order or need each other. It
// looks only at what the file gives soundly, so that it may run beside other
// errors.
func (f *filler) check() {
	w := &f.Wall
	f.ascending("wall.from", "wall.to", w.From, w.To)
	for i, o := range f.openings {
		path := fmt.Sprintf("wall.openings[%d]", i)
		f.ascending(path+".from", path+".to", o.From, o.To)
		f.ascending(path+".sill", path+".head", o.Sill, o.Head)
		if f.Given(path+".window") && !f.Given(path+".sill") {
			f.fault(keys.RuleMissing, path, "the window %s has no sill; add the level of its sill", quote(o.window))
		}
	}
	f.checkReturns()
	for i, k := range f.Site.KeepOuts {
		path := fmt.Sprintf("site.keep_out[%d]", i)
		f.ascending(path+".from", path+".to", k.From, k.To)
		f.ascending(path+".near", path+".far", k.Near, k.Far)
	}
	f.row("wall.studs.at[%d]", len(w.Studs), func(i int) float64 { return w.Studs[i] })
	f.row("posts.rear[%d].at", len(f.rearPosts), func(i int) float64 { return f.rearPosts[i].Along })
	f.row("posts.at[%d].at", len(f.Posts.At)-f.Posts.Rear, func(i int) float64 { return f.Posts.At[i].Along })
	if len(f.errs) == 0 && w.From >= w.To {
		f.fault(RuleOrder, "wall", "the wall ends (%s) before it starts (%s); give both from and to", f.Format().Length(w.To), f.Format().Length(w.From))
	}
	if len(f.errs) == 0 && f.Given("wall.studs") && len(w.Studs) == 0 {
		f.fault(RuleOrder, "wall.studs.first", "the first stud (%s) is beyond the end of the wall (%s); give a stud in the wall, or leave studs out",
			f.Format().Length(f.studFirst), f.Format().Length(w.To))
	}
	f.checkGround()
	f.checkStock()
	f.checkIdle()
	f.checkSkew()
	f.checkBraces()
	f.notUnder("plate.fixing.hole", "plate.fixing.screw", f.Plate.Fixing.Hole, f.Plate.Fixing.Screw)
	f.notUnder("posts.fixing.hole", "posts.fixing.screw", f.post.Fixing.Hole, f.post.Fixing.Screw)
	f.notUnder("posts.bolts.hole", "posts.bolts.diameter", f.Posts.Meet.Bolts.Hole, f.Posts.Meet.Bolts.Diameter)
	f.notUnder("posts.rod.hole", "posts.rod.diameter", f.Posts.Rod.Hole, f.Posts.Rod.Diameter)
}

func (f *filler) fault(rule Rule, path, format string, args ...any) {
	f.errs = append(f.errs, f.Errorf(rule, path, format, args...))
}

// ascending checks two lengths of which the second must be the greater.
func (f *filler) ascending(low, high string, from, to float64) {
	if f.given.Sound(low) && f.given.Sound(high) && from >= to {
		fm := f.Format()
		key := low[strings.LastIndexByte(low, '.')+1:]
		f.fault(RuleOrder, high, "%s (%s) is not above %s (%s, line %d); swap them or put one right",
			spoken(high), fm.Length(to), key, fm.Length(from), f.Pos(low).Line)
	}
}

// row checks positions that must run from left to right. The path of the i-th
// is made from path.
func (f *filler) row(path string, n int, at func(int) float64) {
	for i := 1; i < n; i++ {
		here, before := fmt.Sprintf(path, i), fmt.Sprintf(path, i-1)
		if f.given.Sound(here) && f.given.Sound(before) && at(i) <= at(i-1) {
			fm := f.Format()
			f.fault(RuleOrder, here, "%s (%s) is not to the right of the one before it (%s); list them from left to right",
				spoken(here), fm.Length(at(i)), fm.Length(at(i-1)))
		}
	}
}

// notUnder checks a hole against what goes through it.
func (f *filler) notUnder(hole, rod string, d, least float64) {
	if f.given.Sound(hole) && d < least {
		fm := f.Format()
		f.fault(keys.RuleRange, hole, "%s (%s) is less than %s (%s); make the hole at least as wide",
			spoken(hole), fm.Length(d), spoken(rod), fm.Length(least))
	}
}

func (f *filler) checkReturns() {
	lines := map[Side]int{}
	for i, r := range f.Wall.Returns {
		path := fmt.Sprintf("wall.returns[%d]", i)
		if lines[r.Side] > 0 {
			f.fault(keys.RuleDuplicate, path, "the %s return stands twice, first in line %d; keep one", r.Side, lines[r.Side])
		} else if r.Side != "" {
			lines[r.Side] = f.Pos(path).Line
		}
	}
}
