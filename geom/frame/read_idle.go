package frame

import "slices"

// RuleIdle is of a key that says something of a form that the job does not
// have. Left standing it would look obeyed.
const RuleIdle Rule = "idle key"

// checkIdle refuses keys that have no effect in a job of this form, with what
// would make them mean something.
func (f *filler) checkIdle() {
	p, b, tail, m := f.rearHold(), f.Beam.Hold, f.Rafters.Tail.Shape, f.Posts.Meet
	kind := f.Wall.Kind
	studs := kind.of().studs() != ""
	free := f.Freestanding()
	housed, over := p.housed() || b.housed(), p == Over || b == Over
	if f.Given("slats") && f.Given("battens") {
		f.fault(RuleIdle, "slats", "slats stand between the rafters instead of battens over them, and the job has both; take one of them out")
	}
	if f.Given("slats") && f.Given("blocking") {
		f.fault(RuleIdle, "blocking", "blocks would stand in the bays that the slats fill; take one of them out")
	}
	if f.Given("laths") && !f.Given("battens") {
		f.fault(RuleIdle, "laths", "laths lie over battens, and the job has none; add battens, or take the laths out")
	}
	for _, k := range []struct {
		path  string
		means bool
		when  string
	}{
		{"wall", !free, "the frame has a wall plate"},
		{"posts.rear", free, "the frame has a rear beam"},
		{"posts.packers", !free, "a post is fixed to a wall"},
		{"posts.fixing", !free, "a post is fixed to a wall"},
		{"site.references", free, "the frame has a rear beam"},
		{"site.boundaries.rear", free, "the frame has a rear beam"},
		{"rear_beam.housing", p.housed(), "rear_beam.rafters is housed"},
		{"rear_beam.rafter_drop", p != Over, "rear_beam.rafters is housed or between; under rafters that lie over it, rafters.heel says how they stand"},
		{"plate.housing", p.housed(), "plate.rafters is housed"},
		{"plate.rafter_drop", p != Over, "plate.rafters is housed or between; under rafters that lie over it, rafters.heel says how they stand"},
		{"beam.housing", b.housed(), "beam.rafters is housed"},
		{"beam.rafter_drop", b != Over, "beam.rafters is housed or between; under rafters that lie over it, rafters.heel says how they stand"},
		{"posts.check_out", m.checks(), "posts.beam is checked out or twin checked out"},
		{"posts.clearance", m.checks() && f.Given("posts.top") && m.Top > 0, "the posts are checked out and run on above the beam: posts.top is above 0"},
		{"posts.top", m.RunsUp(), "the posts run up beside the beam: posts.beam is checked out, face-fixed or twin"},
		{"posts.bolts", m.RunsUp(), "the posts run up beside the beam: posts.beam is checked out, face-fixed or twin"},
		{"posts.bracket", m.Meeting == OnBracket, "posts.beam is on bracket"},
		{"posts.rod", m.Meeting == OnTop || m.Meeting == "", "posts.beam is on top"},
		{"posts.chamfer", m.Meeting != OnBracket, "the post's top is bare: posts.beam is not on bracket"},
		{"rafters.clearance", housed, "plate or beam hold the rafters housed"},
		{"rafters.seat", housed, "plate or beam hold the rafters housed"},
		{"rafters.heel", over, "the rafters lie over plate or beam: plate.rafters, rear_beam.rafters or beam.rafters is over"},
		{"rafters.head", p == Over, "the rafters lie over the plate or rear beam: plate.rafters or rear_beam.rafters is over"},
		{"rafters.tail", b == Over, "the rafters lie over the beam: beam.rafters is over"},
		{"rafters.tail.nose", b != Over || tail == TailBevelled || tail == TailQuarter || tail == TailOgee, "the tail's shape is bevelled, quarter round or ogee"},
		{"rafters.tail.bevel", b != Over || tail == TailBevelled, "the tail's shape is bevelled"},
		{"rafters.tail.curve", b != Over || tail == TailOgee, "the tail's shape is ogee"},
		{"wall.studs", studs, "wall.kind has studs behind it; anchors hold anywhere in the wall"},
		{"wall.cavity", kind == OnVeneer, "wall.kind is masonry veneer"},
		{"wall.cut_back", kind == CutBack, "wall.kind is cladding cut back"},
		{"wall.flashing", kind == CutBack, "wall.kind is cladding cut back"},
		{"wall.fascia", kind == OnFascia, "wall.kind is fascia"},
		{"wall.soffit", kind != OnFascia, "the plate is fixed to the wall; that of a fascia is at wall.fascia.underside"},
		{"plate.fixing.row_edge", f.Plate.Fixing.Rows == Staggered, "plate.fixing.rows is staggered"},
		{"plate.fixing.from_edge", !studs, "wall.kind is masonry or concrete"},
		{"posts.fixing.from_edge", !studs, "wall.kind is masonry or concrete"},
		{"posts.footing", f.anyPost(Post.Dug), "a post's base is concrete or stirrup"},
		{"posts.shoe", f.anyPost(func(p Post) bool { return !p.Dug() }), "a post's base is slab or deck"},
		{"battens.check", f.Battens.Lie == LieChecked, "battens.lie is checked"},
		{"valance.set_back", f.Valance.Set != ValanceFace, "valance.set is between posts"},
		{"valance.below", f.Valance.Set == ValanceFace, "valance.set is on the face"},
		{"braces.housing", f.Braces.Joint == BraceHoused, "braces.joint is housed"},
		{"braces.clearance", f.Braces.Joint == BraceHoused, "braces.joint is housed"},
		{"braces.screws", f.Braces.Joint != BraceLapped, "braces.joint is butted or housed"},
		{"braces.bolt", f.Braces.Joint == BraceLapped, "braces.joint is lapped"},
	} {
		if !k.means && f.Given(k.path) {
			f.fault(RuleIdle, k.path, "%s has no effect here: it counts only where %s; take it out, or say that", spoken(k.path), k.when)
		}
	}
	for i, p := range f.Posts.At {
		for key, means := range map[string]bool{".footing": p.Dug(), ".shoe": !p.Dug()} {
			if !means && f.Given(f.postPath(i)+key) {
				f.fault(RuleIdle, f.postPath(i)+key, "%s has no effect here: the post's base is %s; take it out, or change the base", spoken(f.postPath(i)+key), p.Base)
			}
		}
	}
}

// anyPost reports whether any post is so.
func (f *filler) anyPost(is func(Post) bool) bool { return slices.ContainsFunc(f.Posts.At, is) }
