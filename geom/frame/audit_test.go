package frame

import (
	"math"
	"testing"
)

// variants are jobs that between them use every joint and every option.
var variants = []struct {
	name   string
	change func(j *Job)
}{
	{"plain", func(*Job) {}},
	{"level seats", func(j *Job) { j.Rafters.Seat = SeatLevel }},
	{"no fall", func(j *Job) { j.Fall = Fall{Kind: FallDrop} }},
	{"no fall, level seats", func(j *Job) { j.Fall = Fall{Kind: FallDrop}; j.Rafters.Seat = SeatLevel }},
	{"12 in 12", func(j *Job) { steep(j, 45) }},
	{"18 in 12", func(j *Job) { steep(j, math.Atan(1.5)*180/math.Pi) }},
	{"18 in 12, level seats", func(j *Job) { steep(j, math.Atan(1.5)*180/math.Pi); j.Rafters.Seat = SeatLevel }},
	{"rafters centred on the ends", func(j *Job) { j.Rafters.Ends = EndsCentred }},
	{"rafters inset", func(j *Job) { j.Rafters.Ends, j.Rafters.Inset = EndsInset, 130 }},
	{"beam longer than plate", func(j *Job) { j.Beam.From, j.Beam.To = -300, 6250; j.Posts.At[0].Along = -200 }},
	{"stirrups", func(j *Job) {
		for i := range j.Posts.At {
			p := &j.Posts.At[i]
			p.Base, p.Footing.Stand = OnStirrup, 80
		}
	}},
	{"round footings on steps", func(j *Job) {
		for i := range j.Posts.At {
			j.Posts.At[i].Footing.Round = true
			j.Posts.At[i].Ground -= 100 * float64(i)
		}
	}},
	{"no packers, no rods, no studs", func(j *Job) { j.Plate.Packer, j.Posts.Rod, j.Wall.Studs = Packer{}, Rod{}, nil }},
	{"wall posts", func(j *Job) { walled(j) }},
	{"post as deep as the beam is wide", func(j *Job) { j.Posts.Section.Depth = 70 }},
	{"shade", func(j *Job) { j.Battens.Gap, j.Battens.Shade = 0, 0.5 }},
	{"no battens", func(j *Job) { j.Battens = Battens{} }},
}

// steep makes the beam and the plate deep enough for a fall in degrees, and
// the rest high enough to stand under.
func steep(j *Job, angle float64) {
	j.Fall = Fall{Kind: FallAngle, Value: angle * math.Pi / 180}
	j.Plate.Section.Depth, j.Beam.Section.Depth = 290, 290
	j.Plate.Top, j.Wall.Soffit = 7500, 0
	j.Battens.Last = 120
}

func TestFramesAreSound(t *testing.T) {
	for _, v := range variants {
		t.Run(v.name, func(t *testing.T) {
			j := leanTo()
			v.change(j)
			f, err := Build(j)
			if err != nil {
				t.Fatal(err)
			}
			for _, finding := range f.Audit() {
				t.Error(finding.What)
			}
			for _, m := range f.Members {
				if err := m.Solid().Check(); err != nil {
					t.Errorf("%s: %v", m.Mark, err)
				}
			}
			if len(f.Joints) == 0 {
				t.Error("no joints")
			}
		})
	}
}
