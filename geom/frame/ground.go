package frame

import (
	"fmt"
	"math"
	"slices"

	"plumbcut/geom"
)

// groundPoints is the finished ground under the beam: as the job gives it, or
// straight from post to post.
func (j *Job) groundPoints() []GroundPoint {
	if len(j.Levels.Line) > 0 {
		return j.Levels.Line
	}
	var out []GroundPoint
	for _, p := range j.Posts.front() {
		out = append(out, GroundPoint{p.Along, p.Ground})
	}
	return out
}

// GroundAt is the finished ground under the beam at a place along the wall:
// straight from point to point, level beyond the end ones, and at a step that on
// its left.
func GroundAt(j *Job, along float64) float64 {
	points := j.groundPoints()
	if len(points) == 0 {
		return j.Levels.Ground
	}
	for i, p := range points {
		if along > p.Along {
			continue
		}
		if i == 0 {
			return p.Level
		}
		before := points[i-1]
		part := (along - before.Along) / (p.Along - before.Along)
		return before.Level + part*(p.Level-before.Level)
	}
	return points[len(points)-1].Level
}

// GroundLine is the finished ground under the beam from one place along the wall
// to another, as a line of points along and up. Steps are plumb.
func GroundLine(j *Job, from, to float64) []geom.Pt {
	out := []geom.Pt{geom.P(from, GroundAt(j, from))}
	for _, p := range j.groundPoints() {
		if p.Along > from && p.Along < to {
			out = append(out, geom.P(p.Along, p.Level))
		}
	}
	return append(out, geom.P(to, GroundAt(j, to)))
}

// GroundStep is a plumb step in the finished ground: its place along, and the
// levels on its two sides.
type GroundStep struct{ Along, Left, Right float64 }

// GroundSteps are the steps that the job gives, from the left.
func (j *Job) GroundSteps() []GroundStep {
	var out []GroundStep
	line := j.Levels.Line
	for i := 1; i < len(line); i++ {
		if a, b := line[i-1], line[i]; a.Along == b.Along && a.Level != b.Level {
			out = append(out, GroundStep{a.Along, a.Level, b.Level})
		}
	}
	return out
}

// front are the posts under the beam.
func (p Posts) front() []Post { return p.At[:len(p.At)-p.Rear] }

// checkGround refuses a line of the ground that runs back, or that says what
// the posts say too.
func (f *filler) checkGround() {
	line := f.Levels.Line
	for i := 1; i < len(line); i++ {
		here, before := groundPath(i)+".at", groundPath(i-1)+".at"
		if !f.given.Sound(here) || !f.given.Sound(before) {
			continue
		}
		fm := f.Format()
		switch a, b := line[i-1].Along, line[i].Along; {
		case b < a:
			f.fault(RuleOrder, here, "%s (%s) is left of the one before it (%s); list them from left to right", spoken(here), fm.Length(b), fm.Length(a))
		case i > 1 && b == a && line[i-2].Along == a:
			f.fault(RuleOrder, here, "three points of the ground stand at %s; a step has two, its upper and its lower edge", fm.Length(b))
		}
	}
	if len(line) == 0 {
		return
	}
	for i := range f.Posts.At[:len(f.Posts.At)-f.Posts.Rear] {
		if path := f.postPath(i) + ".ground"; f.Given(path) {
			f.fault(RuleIdle, path, "the ground at the posts is read off levels.ground_line (line %d), and %s gives it again; take one of them out",
				f.Pos("levels.ground_line").Line, spoken(path))
		}
	}
}

// groundPath is where the file gives a point of the ground.
func groundPath(i int) string { return fmt.Sprintf("levels.ground_line[%d]", i) }

// checkSteps checks that no post stands across a step of the ground, and says
// where a step is cut into by a footing.
func (c *checker) checkSteps() {
	half := c.job.Posts.Section.Width / 2
	for _, s := range c.job.GroundSteps() {
		i := slices.IndexFunc(c.job.Levels.Line, func(p GroundPoint) bool { return p.Along == s.Along })
		for k, p := range c.job.Posts.At {
			off := math.Abs(p.Along - s.Along)
			switch {
			case off < half-slack:
				c.errorf(RuleGround, groundPath(i), "the step in the ground at %s runs through post %d, which stands from %s to %s; move the step or the post",
					c.mm(s.Along), k+1, c.mm(p.Along-half), c.mm(p.Along+half))
			case p.Dug() && off < p.Footing.Size/2-slack:
				c.warnf(RuleGround, groundPath(i), "the hole of post %d runs %s past the step in the ground at %s; have it confirmed what holds the step and the footing",
					k+1, c.figure(p.Footing.Size/2-off), c.figure(s.Along))
			}
		}
	}
}
