package frame

import "math"

// boltPlay is by how much a bolt's hole is wider than the bolt unless the job
// says otherwise. Within what EN 1995-1-1, 10.4.3, allows (from memory).
const boltPlay = 1

// fillBraces works out the legs of the braces from what of them is given.
func (f *filler) fillBraces() {
	b := &f.Braces
	if !b.There() {
		return
	}
	if b.Bolt.Hole == 0 {
		b.Bolt.Hole = b.Bolt.Diameter + boltPlay
	}
	angle := f.braceAngle
	if !f.Given("braces.angle") {
		angle = math.Pi / 4
	}
	sin, cos := math.Sincos(angle)
	length := f.braceLength
	switch {
	case b.Down > 0 && b.Along > 0:
	case b.Down > 0:
		b.Along = b.Down * cos / sin
	case b.Along > 0:
		b.Down = math.Sqrt(max(0, length*length-b.Along*b.Along))
	default:
		b.Down, b.Along = length*sin, length*cos
	}
}

// checkBraces checks that the lengths of the braces make a triangle.
func (f *filler) checkBraces() {
	along, length := "braces.along", "braces.length"
	if f.given.Sound(along) && f.given.Sound(length) && f.braceLength <= f.Braces.Along {
		f.fault(RuleOrder, length, "a length of %s is not longer than along, %s; it is the long side of the triangle", f.Format().Length(f.braceLength), f.Format().Length(f.Braces.Along))
	}
	f.notUnder("braces.bolt.hole", "braces.bolt.diameter", f.Braces.Bolt.Hole, f.Braces.Bolt.Diameter)
}
