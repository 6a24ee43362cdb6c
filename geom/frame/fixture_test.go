package frame

import (
	"math"

	"plumbcut/geom"
)

// leanTo is a plain job: 6 m along the wall, 3 m out, falling 1:20, studs at
// 600 centres. Invented sizes.
func leanTo() *Job {
	return &Job{
		File:   "lean-to.yaml",
		Levels: Levels{Datum: "finished floor", Ground: -150, Eye: 1600, HeadRoom: 2000},
		Wall:   Wall{From: -500, To: 6500, Cladding: 20, StudWidth: 45, Studs: spaced(-200, 6400, 12)},
		Plate: Plate{
			Section: Section{Depth: 190, Width: 45}, From: 0, To: 6000, Top: 2600,
			Packer:  Packer{Thickness: 20, Width: 90, Height: 150},
			Housing: 10, Drop: 10,
			Fixing: Fixing{Screw: 12, Length: 150, Hole: 13, Spacing: 1000, FromRafter: 75},
		},
		Beam: Beam{Section: Section{Depth: 190, Width: 70}, From: 0, To: 6000, Out: 3000, Housing: 10, Drop: 15},
		Posts: Posts{
			Section: Section{Depth: 115, Width: 115}, Chamfer: 15 * math.Pi / 180,
			Rod: Rod{Diameter: 12, Hole: 16, IntoPost: 200},
			At:  []Post{post(300), post(3000), post(5700)},
		},
		Rafters: Rafters{Section: Section{Depth: 90, Width: 45}, Centres: 600, Ends: EndsFlush, Clearance: 0.5, Seat: SeatFollows},
		Battens: Battens{Section: Section{Depth: 45, Width: 45}, Gap: 120, First: 60, Last: 60, OverLeft: 100, OverRight: 100},
		Fall:    Fall{Kind: FallRatio, Value: 20, From: PlateOuter, To: BeamInner},
	}
}

func post(along float64) Post {
	return Post{
		Along: along, Ground: -150, Base: InConcrete,
		Footing: Footing{Size: 350, Depth: 700, Pad: 100, Collar: 30},
	}
}

// walled gives the job returns at both ends, its end posts fixed to them.
func walled(j *Job) *Job {
	j.Wall.Returns = []Return{{Left, 0, 3500}, {Right, 6000, 3500}}
	j.Battens.OverLeft, j.Battens.OverRight = 0, 0
	for i, side := range map[int]Side{0: Left, len(j.Posts.At) - 1: Right} {
		p := &j.Posts.At[i]
		p.Wall = side
		p.Packer = Packer{Thickness: 20, Width: 90, Height: 100}
		p.Fixing = Fixing{Screw: 12, Length: 180, Hole: 13, Spacing: 800}
		p.Along = 20 + 115.0/2
		if side == Right {
			p.Along = 6000 - p.Along
		}
	}
	return j
}

func carved(m Member) geom.Solid { return m.Carved() }
