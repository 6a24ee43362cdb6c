package frame

import (
	"fmt"
	"math"

	"plumbcut/geom/measure"
)

// The rules of the timber: what cannot be built is an Error, what is doubtful
// a Warning.
const (
	RuleSize           Rule = "size"          // not a positive, finite size
	RuleFall           Rule = "fall"          // upwards, or steeper than a frame of this form
	RuleFallBetween    Rule = "fall between"  // the named arrises are in the wrong order
	RuleHeadHeight     Rule = "head height"   // under the beam
	RuleBeamOut        Rule = "beam distance" // no room between plate and beam
	RuleRaftersOverlap Rule = "rafters overlap"
	RuleRafterNumber   Rule = "number of rafters"
	RuleHousing        Rule = "housing depth"     // too much of the width cut away
	RuleBelowSeat      Rule = "timber below seat" // too little left under a housing
	RuleSeat           Rule = "seat"              // too little bearing under a birdsmouth
	RuleNotch          Rule = "birdsmouth"        // too much of the rafter's depth cut away
	RuleHead           Rule = "rafter's upper end"
	RuleTail           Rule = "rafter's tail"
	RuleHanger         Rule = "hanger" // without timber behind it
	RuleBattenNumber   Rule = "number of battens"
	RuleBattensOverlap Rule = "battens overlap"
	RuleBattenClash    Rule = "batten clash" // with plate, beam or soffit
	RuleCheck          Rule = "check"        // for the battens: too deep, or too near something
	RuleFixing         Rule = "fixing"       // screws that cannot be placed as stated
	RuleBlocking       Rule = "blocking"     // a screw without a stud
	RuleStudsUnknown   Rule = "studs unknown"
	RuleBacking        Rule = "what the plate is fixed to"
	RulePostOffBeam    Rule = "post off beam"
	RuleTwoBeams       Rule = "two beams" // not on the posts' tops
	RulePostsOverlap   Rule = "posts overlap"
	RulePostWall       Rule = "post on wall" // does not stand against its return
	RulePostDoor       Rule = "post before door"
	RulePostWidth      Rule = "beam wider than post"
	RuleCheckOut       Rule = "check-out" // too much of a post cut away, or deeper than the beam
	RulePostTop        Rule = "post top"  // in the way of a rafter or batten
	RuleBolts          Rule = "bolts"     // without room, or nearer to an edge than is usual
	RuleNoSeat         Rule = "beam without seat"
	RuleRod            Rule = "rod" // breaks out of beam or post, or into a housing
	RuleFooting        Rule = "footing"
	RuleStand          Rule = "stirrup clearance"
	RuleBase           Rule = "what a post stands on"
	RulePlateWall      Rule = "plate off wall"
	RuleOpening        Rule = "opening"     // crossed by the plate
	RuleSoffit         Rule = "soffit"      // met by the plate or a rafter
	RuleReturnClash    Rule = "return wall" // run into by a timber
	RuleStock          Rule = "stock"       // sticks that no timber is cut from, or that are too short
	RuleStraps         Rule = "straps"
	RuleBrace          Rule = "knee brace"
	RuleBlock          Rule = "blocks between rafters"
	RuleFascia         Rule = "fascia"
	RuleValance        Rule = "valance"
	RuleGround         Rule = "ground" // a post or its hole across a step
)

// checker gathers what is wrong or doubtful while a frame is laid out.
type checker struct {
	job    *Job
	set    Setout
	slope  Slope
	sloped bool // the fall is solved: heights may be reckoned
	format measure.Format
	errs   Errors
	warns  []Warning
}

func newChecker(j *Job) *checker {
	return &checker{job: j, format: measure.Format{Units: j.Units, Step: 0.1}}
}

func (c *checker) errorf(rule Rule, path, format string, args ...any) {
	c.errs = append(c.errs, c.job.Errorf(rule, path, format, args...))
}

func (c *checker) warnf(rule Rule, path, format string, args ...any) {
	c.warns = append(c.warns, Warning{rule, fmt.Sprintf(format, args...), c.job.Pos(path)})
}

// mm writes a length in the job's own units, with the unit, finely enough to
// tell why a job is refused.
func (c *checker) mm(v float64) string { return c.withUnit(c.format, v) }

// figure writes a length as the drawings do, for warnings that stand on them.
func (c *checker) figure(v float64) string { return c.withUnit(c.job.Format(), v) }

func (c *checker) withUnit(f measure.Format, v float64) string {
	if f.Units == measure.FeetInches {
		return f.Length(v)
	}
	return f.Length(v) + " mm"
}

// seat is the level on which a post carries what stands on it.
func (c *checker) seat(post int) float64 { return c.set.Under(post).Bottom }

// postBottom is the level of the end of a post.
func (c *checker) postBottom(p Post) float64 { return p.Base.of().foot(c.job, p) }

// postPath is where the job file gives a post: one under the rear beam may have
// its place from the one opposite.
func (j *Job) postPath(i int) string {
	n := len(j.Posts.At) - j.Posts.Rear
	switch {
	case i < n:
		return fmt.Sprintf("posts.at[%d]", i)
	case j.Given("posts.rear"):
		return fmt.Sprintf("posts.rear[%d]", i-n)
	}
	return fmt.Sprintf("posts.at[%d]", i-n)
}

func (c *checker) postPath(i int) string { return c.job.postPath(i) }

// checkSizes refuses sizes that no later step could reckon with. The reader
// has refused most of them already, with better words.
func (c *checker) checkSizes() {
	j := c.job
	positive := func(path string, vs ...float64) {
		for _, v := range vs {
			if !(v > 0) || math.IsInf(v, 0) {
				c.errorf(RuleSize, path, "%g is no size; give a length above 0", v)
				return
			}
		}
	}
	notNegative := func(path string, vs ...float64) {
		for _, v := range vs {
			if !(v >= 0) || math.IsInf(v, 0) {
				c.errorf(RuleSize, path, "%g cannot be here; give 0 or more", v)
				return
			}
		}
	}
	if j.Freestanding() {
		positive("rear_beam", j.Rear.Section.Depth, j.Rear.Section.Width, j.Rear.To-j.Rear.From, float64(j.Posts.Rear))
		notNegative("rear_beam.rafter_drop", j.Rear.Drop)
	} else {
		c.checkPlateSizes(positive, notNegative)
	}
	positive("beam", j.Beam.Section.Depth, j.Beam.Section.Width, j.Beam.To-j.Beam.From, j.Beam.Out)
	notNegative("beam.drop", j.Beam.Drop, j.Beam.OutRight)
	if j.Freestanding() && j.Rear.Hold.housed() {
		positive("rear_beam.housing", j.Rear.Housing)
	}
	if j.Beam.Hold.housed() {
		positive("beam.housing", j.Beam.Housing)
	}
	positive("rafters", j.Rafters.Section.Depth, j.Rafters.Section.Width)
	notNegative("rafters", j.Rafters.Clearance, j.Rafters.Inset, j.Rafters.Centres, j.Rafters.Heel, j.Rafters.Head)
	notNegative("rafters.tail", j.Rafters.Tail.Overhang, j.Rafters.Tail.Nose, j.Rafters.Tail.Curve)
	positive("posts", j.Posts.Section.Depth, j.Posts.Section.Width, float64(len(j.Posts.At)))
	notNegative("posts", j.Posts.Rod.Diameter, j.Posts.Rod.Hole, j.Posts.Rod.IntoPost, j.Posts.Chamfer)
	if j.Battens.Section.Depth != 0 {
		positive("battens", j.Battens.Section.Depth, j.Battens.Section.Width)
	}
	if l := j.Slats; l.Section.Depth != 0 {
		positive("slats", l.Section.Depth, l.Section.Width, l.Cleats.Section.Depth, l.Cleats.Section.Width)
		notNegative("slats", l.Angle, l.Down, l.Clearance)
	}
	if j.Laths.Section.Depth != 0 {
		positive("laths", j.Laths.Section.Depth, j.Laths.Section.Width)
		notNegative("laths", j.Laths.Inset, j.Laths.Overhang)
	}
	if j.hasRoof() {
		positive("roof", j.Roof.Width, j.Roof.Profile)
		notNegative("roof", j.Roof.Lap, j.Roof.Longest, j.Roof.EndLap, j.Roof.Gap, j.Roof.Eave, j.Roof.OverLeft, j.Roof.OverRight)
	}
	for i, p := range j.Posts.At {
		if p.Dug() {
			positive(c.postPath(i), p.Footing.Size, p.Footing.Depth)
		}
		notNegative(c.postPath(i), p.Shoe.Stand, p.Shoe.Diameter, p.Shoe.Length, p.Shoe.FromEdge)
		notNegative(c.postPath(i), p.Footing.Pad, p.Footing.Collar, p.Footing.Stand)
		if p.Wall != "" {
			positive(c.postPath(i), p.Fixing.Spacing, p.Fixing.Hole)
		}
		if p.Wall != "" && p.Packer.Thickness != 0 {
			positive(c.postPath(i), p.Packer.Thickness, p.Packer.Width, p.Packer.Height)
		}
	}
}

// checkPlateSizes is checkSizes of the wall plate.
func (c *checker) checkPlateSizes(positive, notNegative func(path string, vs ...float64)) {
	p := c.job.Plate
	positive("plate", p.Section.Depth, p.Section.Width, p.To-p.From)
	positive("plate.fixing", p.Fixing.Spacing, p.Fixing.Hole)
	notNegative("plate", p.Packer.Thickness, p.Fixing.FromRafter, p.Drop, p.Fixing.Screw)
	if p.Packer.Thickness > 0 {
		positive("plate.packers", p.Packer.Width, p.Packer.Height)
	}
	if p.Hold.housed() {
		positive("plate.housing", p.Housing)
	}
}

// validate lays the job out and checks it. It goes on as long as the next
// question still makes sense, so that all errors are found at once.
func (c *checker) validate() {
	c.checkSizes()
	if !c.job.Freestanding() {
		c.job.Wall.Kind.of().needs(c)
	}
	if len(c.errs) > 0 {
		return
	}
	if c.job.Freestanding() && !c.job.Posts.Meet.onTop() {
		c.errorf(RuleTwoBeams, "posts.beam", "the posts of a free-standing frame carry both beams on their tops; take posts.beam out")
		return
	}
	if !c.checkTurn() {
		return
	}
	layOut(c)
	c.checkPosts()
	c.checkSteps()
	c.checkKeepOuts()
	c.checkBeamEnds()
	if !c.job.Freestanding() {
		c.checkHouse()
	}
	if !c.sloped {
		return
	}
	c.job.Wall.Kind.of().check(c)
	for _, k := range c.set.Carriers {
		k.Hold.way().check(c, k)
	}
	if c.checkHead() {
		c.checkPostTops()
		c.layOutBraces()
		c.layOutBlocks()
		c.layOutFascia()
		c.layOutValance()
		c.layOutTrim()
		c.layOutRoofStraps()
	}
}
