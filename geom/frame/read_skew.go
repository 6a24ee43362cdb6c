package frame

import "math"

// RuleSkew is of a beam that is not parallel with the wall: what it is not made
// with, or a turn that is too great.
const RuleSkew Rule = "skew"

// checkSkew refuses what a beam that is not parallel with the wall is not made
// with, and says what would do. The table is the whole of it.
func (f *filler) checkSkew() {
	if f.Beam.turn() == 0 {
		return
	}
	for _, no := range []struct {
		path  string
		has   bool
		what  string
		right string
	}{
		{"beam.rafters", f.Beam.Hold == Over, "rafters cannot lie over it: they would stand on it at different heights", "let it hold them housed or between"},
		{"fall.drop", f.Given("fall.drop"), "the drop is another at every rafter", "give the fall as an angle or a slope"},
		{"rafters.seat", f.Given("rafters.seat") && f.Rafters.Seat == SeatLevel, "the seats follow the fall", "leave seat out"},
		{"posts.beam", !f.Posts.Meet.onTop() && f.Posts.Meet.Meeting != OnBracket, "it is carried on top of its posts or on brackets", "make posts.beam on top or on bracket"},
		{"rafters.straps", f.Given("rafters.straps"), "straps would have to be bent along it", "leave them out, and tie the rafters down otherwise"},
		{"blocking", f.Given("blocking"), "no row of blocks is as far from it at every rafter", "leave them out"},
		{"braces", f.Given("braces"), "knee braces are not drawn", "leave them out"},
		{"valance", f.Given("valance"), "a valance is not drawn", "leave it out"},
		{"laths", f.Given("laths"), "battens end at different rafters, and laths would lie on different numbers of them", "leave them out"},
		{"slats", f.Given("slats"), "no two bays are as long", "use battens"},
		{"roof", f.Given("roof"), "the sheets would all have to be cut on the skew", "leave the roof out"},
	} {
		if no.has {
			f.fault(RuleSkew, no.path, "with a beam that is not parallel with the wall (line %d) %s; %s, or give beam.out once", f.Pos("beam.out").Line, no.what, no.right)
		}
	}
	for i, p := range f.Posts.At {
		if !p.Dug() {
			f.fault(RuleSkew, f.postPath(i), "post %d stands on a %s that is there already, and its edge is not drawn on the skew of the beam (line %d); make its base concrete or stirrup, or give beam.out once", i+1, p.Base, f.Pos("beam.out").Line)
		}
		if p.Wall != "" {
			f.fault(RuleSkew, f.postPath(i), "post %d stands square to its beam, which is not parallel with the wall (line %d), and not to a return; let it stand free, or give beam.out once", i+1, f.Pos("beam.out").Line)
		}
	}
}

// fillTurn works out the beam's length on its outer face: as given, or such that
// it comes to the ends of what carries the rafters at the house.
func (f *filler) fillTurn(length float64) float64 {
	b := &f.Beam
	if f.beamOut.one > 0 || f.beamOut.left == 0 {
		b.Out = f.beamOut.one
		return length
	}
	b.Out, b.OutRight = f.beamOut.left, f.beamOut.right
	return math.Hypot(length, b.Out-b.OutRight)
}
