package frame

// RuleIdle is of a key that says something of a form that the job does not
// have. Left standing it would look obeyed.
const RuleIdle Rule = "idle key"

// checkIdle refuses keys that have no effect in a job of this form, with what
// would make them mean something.
func (f *filler) checkIdle() {
	p, b, tail := f.Plate.Hold, f.Beam.Hold, f.Rafters.Tail.Shape
	housed, over := p.housed() || b.housed(), p == Over || b == Over
	if f.Given("laths") && !f.Given("battens") {
		f.fault(RuleIdle, "laths", "laths lie over battens, and the job has none; add battens, or take the laths out")
	}
	for _, k := range []struct {
		path  string
		means bool
		when  string
	}{
		{"plate.housing", p.housed(), "plate.rafters is housed"},
		{"plate.rafter_drop", p != Over, "plate.rafters is housed or between; under rafters that lie over it, rafters.heel says how they stand"},
		{"beam.housing", b.housed(), "beam.rafters is housed"},
		{"beam.rafter_drop", b != Over, "beam.rafters is housed or between; under rafters that lie over it, rafters.heel says how they stand"},
		{"rafters.clearance", housed, "plate or beam hold the rafters housed"},
		{"rafters.seat", housed, "plate or beam hold the rafters housed"},
		{"rafters.heel", over, "the rafters lie over plate or beam: plate.rafters or beam.rafters is over"},
		{"rafters.head", p == Over, "the rafters lie over the plate: plate.rafters is over"},
		{"rafters.tail", b == Over, "the rafters lie over the beam: beam.rafters is over"},
		{"rafters.tail.nose", b != Over || tail == TailBevelled || tail == TailQuarter || tail == TailOgee, "the tail's shape is bevelled, quarter round or ogee"},
		{"rafters.tail.bevel", b != Over || tail == TailBevelled, "the tail's shape is bevelled"},
		{"rafters.tail.curve", b != Over || tail == TailOgee, "the tail's shape is ogee"},
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
}
