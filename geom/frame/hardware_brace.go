package frame

import (
	"math"

	"plumbcut/geom/measure"
)

// braced is what holds one end of a brace: screws through its lower edge, or a
// bolt through both timbers with a washer at each end and a nut.
func (f *Frame) braced(j Joint, use string) []Hardware {
	b := f.Job.Braces
	t := f.Members[j.B]
	end := FaceStart
	if j.Kind == JointBraceBeam {
		end = FaceEnd
	}
	if b.Joint != BraceLapped {
		face := FaceBottom
		if j.Kind == JointBracePost {
			face = FaceRight
			if j.Bearing.N.X < 0 {
				face = FaceLeft
			}
		}
		spots := []Spot{{Member: j.A, Face: FaceBottom, At: f.Members[j.A].EndCut(end).Meets(f.Members[j.A], 0, 0)}, {Member: j.B, Face: face, At: f.along(j.B, j)}}
		return []Hardware{{CoachScrew, HardwareSize{Diameter: b.Screws.Diameter, Length: b.Screws.Length}, use, b.Screws.Each, spots}}
	}
	spots := []Spot{{Member: j.A, Face: FaceLeft, At: f.along(j.A, j)}, {Member: j.B, Face: FaceOuter, At: f.along(j.B, j)}}
	behind := t.Section.Width
	if t.Kind.Stands() {
		behind = t.Section.Depth
	}
	d := HardwareSize{Diameter: b.Bolt.Diameter}
	return []Hardware{
		{Bolt, HardwareSize{Diameter: b.Bolt.Diameter, Length: f.Job.boltLength(b.Section.Width + behind)}, use, 1, spots},
		{Washer, d, use, 2, spots},
		{Nut, d, use, 1, spots[1:]},
	}
}

// boltLength is the length under its head of a bolt through so much timber: two
// diameters more, for washers and nut, rounded up to a length that is sold.
// Common practice, no source.
func (j *Job) boltLength(through float64) float64 {
	step := 10.0
	if j.Units == FeetInches {
		step = measure.Inch / 2
	}
	return math.Ceil((through+2*j.Braces.Bolt.Diameter)/step-slack) * step
}
