package frame

import (
	"math"
	"slices"
	"strconv"
	"testing"

	"plumbcut/geom"
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
	{"battens checked into the rafters", checkedIn},
	{"battens and rafters checked into each other", func(j *Job) { checkedIn(j); j.Battens.Check = Checks{15, 10, 0.5} }},
	{"checks in the battens alone", func(j *Job) { checkedIn(j); j.Battens.Check = Checks{0, 20, 1} }},
	{"checked, hung on both", func(j *Job) { checkedIn(j); j.Plate.Hold, j.Beam.Hold = Between, Between }},
	{"checked, over both", func(j *Job) { checkedIn(j); overBoth(j) }},
	{"laths over the battens", lathed},
	{"laths over checked battens, over both", func(j *Job) { lathed(j); overBoth(j); checkedIn(j) }},
	{"roofed", roofed},
	{"roofed in two courses, over both", func(j *Job) {
		roofed(j)
		overBoth(j)
		j.Rafters.Tail.Overhang = 200
		j.Roof.Longest, j.Roof.EndLap, j.Roof.From = 2000, 200, Right
	}},
	{"slats between the rafters", slatted},
	{"slats, outer side up, hung on both", func(j *Job) { slatted(j); j.Slats.OuterUp = true; j.Plate.Hold, j.Beam.Hold = Between, Between }},
	{"slats on edge, no fall", func(j *Job) {
		slatted(j)
		j.Fall = Fall{Kind: FallDrop}
		j.Slats.Angle, j.Slats.Centres, j.Slats.Section.Width = math.Pi/2, 90, 70
	}},
	{"slats that lie flat, over both", func(j *Job) { slatted(j); overBoth(j); j.Slats.Angle, j.Slats.First = 0, 40 }},
	{"no battens", func(j *Job) { j.Battens = Battens{} }},
	{"over both", overBoth},
	{"over both, no fall", func(j *Job) { overBoth(j); j.Fall = Fall{Kind: FallDrop} }},
	{"over both, 12 in 12", func(j *Job) { overBoth(j); steep(j, 45); j.Rafters.Tail.Overhang = 300 }},
	{"over both, deep notch", func(j *Job) { overBoth(j); j.Rafters.Heel = 60; j.Rafters.Tail.Shape = TailSquare }},
	{"over both, bevelled tail", func(j *Job) {
		overBoth(j)
		j.Rafters.Tail = Tail{Overhang: 400, Shape: TailBevelled, Nose: 35, Splay: 30 * math.Pi / 180}
	}},
	{"over both, steep, the bevel runs on", func(j *Job) {
		overBoth(j)
		steep(j, 42)
		j.Rafters.Tail = Tail{Overhang: 400, Shape: TailBevelled, Nose: 40, Splay: 70 * math.Pi / 180}
	}},
	{"over both, quarter round", func(j *Job) { overBoth(j); j.Rafters.Tail = Tail{Overhang: 300, Shape: TailQuarter} }},
	{"over both, ogee, 12 in 12", func(j *Job) {
		overBoth(j)
		steep(j, 45)
		j.Rafters.Tail = Tail{Overhang: 300, Shape: TailOgee, Nose: 20, Curve: 110}
	}},
	{"over both, profile", func(j *Job) {
		overBoth(j)
		j.Rafters.Tail = Tail{Overhang: 300, Shape: TailProfile, Profile: []EndPoint{{Down: 20}, {Back: 12, Down: 20}, {Back: 40, Down: 50, Hollow: 32}, {Back: 90, Round: 60}}}
	}},
	{"over both, battens all over", func(j *Job) { overBoth(j); j.Battens.First, j.Battens.Last = -50, 0 }},
	{"over both, no tail", func(j *Job) { overBoth(j); j.Rafters.Tail = Tail{} }},
	{"housed at the plate, over the beam", func(j *Job) { overBoth(j); j.Plate.Hold, j.Rafters.Head = Housed, 0 }},
	{"over the plate, hung on the beam", func(j *Job) { overBoth(j); j.Beam.Hold, j.Rafters.Tail = Between, Tail{} }},
	{"hung on both", func(j *Job) { j.Plate.Hold, j.Beam.Hold = Between, Between }},
	{"hung on both, no fall", func(j *Job) { j.Plate.Hold, j.Beam.Hold, j.Fall = Between, Between, Fall{Kind: FallDrop} }},
	{"hung on the plate, level seats in the beam", func(j *Job) { j.Plate.Hold, j.Rafters.Seat = Between, SeatLevel }},
	{"checked out", func(j *Job) { meets(j, CheckedOut) }},
	{"checked out, proud of the posts", func(j *Job) { meets(j, CheckedOut); j.Posts.Meet.CheckOut = 40 }},
	{"checked out, posts above the beam", func(j *Job) {
		meets(j, CheckedOut)
		j.Posts.Meet.Top, j.Posts.Meet.TopSaid, j.Posts.Meet.Clearance = 30, true, 1
	}},
	{"checked out under rafters", func(j *Job) {
		meets(j, CheckedOut)
		j.Posts.At[1].Along = 3000
		j.Beam.Section.Depth, j.Posts.Meet.Bolts.Number = 290, 2
	}},
	{"checked out, wall posts", func(j *Job) {
		walled(j)
		meets(j, CheckedOut)
		j.Posts.At[0].Along, j.Posts.At[2].Along = 77.5, 5922.5
		j.Rafters.Ends, j.Rafters.Inset = EndsInset, 160
	}},
	{"checked out, rafters over both", func(j *Job) { overBoth(j); meets(j, CheckedOut) }},
	{"checked out, hung on both", func(j *Job) { j.Plate.Hold, j.Beam.Hold = Between, Between; meets(j, CheckedOut) }},
	{"face-fixed", func(j *Job) { meets(j, FaceFixed) }},
	{"face-fixed, low posts, level tops", func(j *Job) {
		meets(j, FaceFixed)
		j.Posts.Chamfer = 0
		j.Posts.Meet.Top, j.Posts.Meet.TopSaid = -40, true
	}},
	{"face-fixed, rafters over both, in pairs", func(j *Job) {
		overBoth(j)
		meets(j, FaceFixed)
		j.Posts.Meet.Bolts.Pattern, j.Posts.Meet.Bolts.Number = BoltsInPairs, 4
	}},
	{"twin beams", func(j *Job) { meets(j, TwinBolted) }},
	{"twin beams, posts above them", func(j *Job) {
		meets(j, TwinBolted)
		j.Posts.Meet.Top, j.Posts.Meet.TopSaid = 120, true
	}},
	{"twin beams, hung on the inner", func(j *Job) { j.Beam.Hold = Between; meets(j, TwinBolted) }},
	{"twin beams, rafters over both", func(j *Job) { overBoth(j); meets(j, TwinBolted); j.Posts.At[1].Along = 3000 }},
	{"twin beams, rafters over both, no fall", func(j *Job) { overBoth(j); meets(j, TwinBolted); j.Fall = Fall{Kind: FallDrop} }},
	{"twin beams, rafters over both, seat runs out", func(j *Job) { overBoth(j); meets(j, TwinBolted); j.Rafters.Heel = 78.5 }},
	{"twin beams checked out", func(j *Job) { meets(j, TwinChecked) }},
	{"twin beams checked out, posts above them", func(j *Job) {
		meets(j, TwinChecked)
		j.Posts.Meet.Top, j.Posts.Meet.TopSaid, j.Posts.Meet.Clearance = 120, true, 1
	}},
	{"twin beams checked out, rafters over both", func(j *Job) { overBoth(j); meets(j, TwinChecked); j.Posts.Meet.CheckOut = 20 }},
	{"on brackets", func(j *Job) { meets(j, OnBracket) }},
	{"on brackets, centred", func(j *Job) { meets(j, OnBracket); j.Posts.Meet.Bracket.Centred = true }},
	{"free-standing", func(j *Job) { free(j) }},
	{"free-standing, no fall, posts of two widths of beam", func(j *Job) { free(j); j.Fall = Fall{Kind: FallDrop}; j.Rear.Section.Width = 90 }},
	{"free-standing, rafters over both beams, to both sides", func(j *Job) {
		free(j)
		overBoth(j)
		j.Rear.Hold, j.Rafters.Head = Over, 350
		j.Posts.At[4].Along = 3270
	}},
	{"free-standing, hung, on stirrups", func(j *Job) {
		free(j)
		j.Rear.Hold, j.Beam.Hold = Between, Between
		for i := range j.Posts.At {
			j.Posts.At[i].Base = OnStirrup
		}
	}},
	{"free-standing, steep", func(j *Job) { free(j); steep(j, 30); j.Rear.Section.Depth, j.Rear.Top = 290, 5000 }},
	{"hung on both, proud of them", func(j *Job) {
		j.Plate.Hold, j.Beam.Hold = Between, Between
		j.Plate.Drop, j.Beam.Drop = 0, 0
		j.Plate.Section.Depth = 100
	}},
	{"braces, butted", func(j *Job) { braced(j, BraceButted) }},
	{"braces, housed", func(j *Job) { braced(j, BraceHoused) }},
	{"braces, housed, 4 in 3, wall posts", func(j *Job) { walled(j); braced(j, BraceHoused); j.Braces.Down, j.Braces.Along = 500, 375 }},
	{"braces, lapped", func(j *Job) { braced(j, BraceLapped); j.Posts.Section.Width = 140; j.Posts.Rod = Rod{} }},
	{"braces, lapped under tails", func(j *Job) {
		overBoth(j)
		braced(j, BraceLapped)
		j.Braces.At = []BraceAt{{Post: 1, Side: Right}, {Post: 2, Side: Left}, {Post: 3, Side: Left}}
		j.Posts.At[2].Along = 5500
	}},
	{"blocks, fascia, valance", func(j *Job) { overBoth(j); trimmed(j) }},
	{"plumb blocks, square tails, valance on the face", func(j *Job) {
		overBoth(j)
		trimmed(j)
		j.Rafters.Tail.Shape = TailSquare
		j.Blocking.Set, j.Blocking.Section.Depth = BlockPlumb, 60
		j.Valance.Set, j.Valance.Below, j.Valance.Back = ValanceFace, 110, 0
		j.Fascia.Over = 50
	}},
	{"bevelled tails with a fascia, braces behind a valance", func(j *Job) {
		overBoth(j)
		trimmed(j)
		j.Rafters.Tail = Tail{Overhang: 400, Shape: TailBevelled, Nose: 35, Splay: 30 * math.Pi / 180}
		braced(j, BraceHoused)
		j.Valance.Set, j.Valance.Below, j.Valance.Back = ValanceFace, 110, 0
	}},
	{"blocks between housed rafters", func(j *Job) {
		trimmed(j)
		j.Fascia, j.Blocking.Rows = Fascia{}, []BlockRow{{Down: 900}, {Down: 1800}}
	}},
}

// trimmed gives the job blocks, a fascia and a valance.
func trimmed(j *Job) {
	two := EndScrews{Each: 2}
	j.Posts.Rod = Rod{}
	j.Blocking = Blocking{Section: Section{Depth: 70, Width: 45}, Rows: []BlockRow{{Over: "plate"}, {Down: 1400}, {Over: "beam"}}, Screws: two}
	j.Fascia = Fascia{Section: Section{Depth: 140, Width: 25}, Screws: two}
	j.Valance = Valance{Section: Section{Depth: 140, Width: 25}, Back: 10, Screws: two}
}

// braced gives the job knee braces of 90 × 70 with legs of 600.
func braced(j *Job, joint BraceJoint) {
	j.Braces = Braces{
		Section: Section{Depth: 90, Width: 70}, Down: 600, Along: 600, Joint: joint,
		Housing: 15, Clearance: 0.5, Screws: EndScrews{Each: 2}, Bolt: LapBolt{Diameter: 12, Hole: 13},
	}
}

// meets lets the beam meet its posts in a way, between the rafters.
func meets(j *Job, m Meeting) {
	j.Posts.Meet = Meet{Meeting: m}
	j.Posts.Rod = Rod{}
	switch m {
	case OnBracket:
		j.Posts.Meet.Bracket.Thickness = 6
	default:
		j.Posts.Meet.Bolts = Bolts{Diameter: 12, Hole: 13, Number: 2}
		j.Posts.At[1].Along = 3300
	}
}

// free gives the job a rear beam on posts of its own for its plate and wall.
func free(j *Job) {
	j.Rear = RearBeam{Beam: Beam{Section: Section{Depth: 190, Width: 70}, From: 0, To: 6000, Housing: 10, Drop: 10}, Top: 2500}
	j.Plate, j.Wall = Plate{}, Wall{}
	j.Fall.From, j.Fall.To = "", ""
	j.Posts.At = append(j.Posts.At, post(400), post(3000), post(5600))
	j.Posts.Rear = 3
}

// overBoth lays the rafters over plate and beam, with tails.
func overBoth(j *Job) {
	j.Plate.Hold, j.Beam.Hold = Over, Over
	j.Rafters.Head = 15
	j.Posts.At[1].Along = 3270 // clear of the rafters, for its rod
	j.Rafters.Tail = Tail{Overhang: 400, Shape: TailPlumb}
}

// checkedIn lets the battens into the rafters.
func checkedIn(j *Job) {
	j.Battens.Lie, j.Battens.Check = LieChecked, Checks{Rafter: 20, Clearance: 1}
}

// lathed lays laths over the battens.
func lathed(j *Job) {
	j.Laths = Laths{Section: Section{Depth: 20, Width: 40}, Shade: 0.4, Inset: 30, Overhang: 10, Screws: BattenScrews{Each: 1}}
}

// slatted stands slats between the rafters instead of the battens.
func slatted(j *Job) {
	j.Battens = Battens{}
	j.Slats = Slats{
		Section: Section{Depth: 15, Width: 60}, Angle: 35 * math.Pi / 180, Centres: 110, First: 30, Last: 30, Down: 5, Clearance: 2,
		Screws: BattenScrews{Each: 1}, Cleats: Cleats{Section: Section{Depth: 18, Width: 25}, Screws: BattenScrews{Each: 2}},
	}
}

// roofed lays sheets over the battens, with gutter, downpipe and flashing.
func roofed(j *Job) {
	j.Plate.Drop, j.Beam.Drop, j.Posts.Rod = 0, 0, Rod{}
	j.Roof = Roof{
		Sheet: "Sample sheet", Thickness: 0.8, Profile: 18, Width: 860, Lap: 90, From: Left, Gap: 20, Eave: 50, LeastFall: 0.04,
		Gutter: Gutter{Section: Section{Depth: 100, Width: 120}, Under: 5}, Downpipes: []Downpipe{{Along: 1000, Size: 80, To: -150}},
		Flashing: Flashing{Up: 100, Over: 150},
	}
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

// TestAuditSeesFaults spoils a sound frame in ways that a fault of the program
// might, and expects to be told.
func TestAuditSeesFaults(t *testing.T) {
	for _, c := range []struct {
		name, rule string
		spoil      func(f *Frame)
	}{
		{"a rafter lifted by 0.1", AuditBearing, func(f *Frame) { shift(f, KindRafter, geom.V(0, 0, 0.1)) }},
		{"a rafter lowered by 0.1", AuditClash, func(f *Frame) { shift(f, KindRafter, geom.V(0, 0, -0.1)) }},
		{"a rafter out of its housing's middle", AuditClash, func(f *Frame) { shift(f, KindRafter, geom.V(0.3, 0, 0)) }},
		{"a packer too low", AuditBearing, func(f *Frame) { shift(f, KindPacker, geom.V(0, 0, -50)) }},
		{"a beam off its posts", AuditBearing, func(f *Frame) { shift(f, KindBeam, geom.V(0, 0, 1)) }},
		{"a post without its socket", AuditClash, func(f *Frame) {
			m := &f.Of(KindFooting)[0]
			m.solid = geom.Box(geom.Vec{}, geom.V(m.Length, m.Section.Width, m.Section.Depth)).Placed(m.Place)
		}},
	} {
		f := mustBuild(t, leanTo())
		c.spoil(f)
		if !slices.ContainsFunc(f.Audit(), func(x Finding) bool { return x.Rule == c.rule }) {
			t.Errorf("%s: the audit finds no %s", c.name, c.rule)
		}
	}
}

// shift moves the solid of the first member of a kind.
func shift(f *Frame, kind Kind, by geom.Vec) {
	a := geom.World()
	a.O = by
	m := &f.Of(kind)[0]
	m.solid = m.solid.Placed(a)
}

// BenchmarkBuild measures the model alone, near linear in the rafters.
func BenchmarkBuild(b *testing.B) {
	for _, n := range []int{10, 100, 1000, 2000} {
		j := leanTo()
		j.Plate.To, j.Beam.To, j.Wall.To = float64(n)*200, float64(n)*200, float64(n)*200
		j.Rafters.Number = n
		j.Posts.At = nil
		for x := 300.0; x < float64(n)*200; x += 2700 {
			j.Posts.At = append(j.Posts.At, post(x))
		}
		b.Run(strconv.Itoa(n), func(b *testing.B) {
			for b.Loop() {
				if _, err := Build(j); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
