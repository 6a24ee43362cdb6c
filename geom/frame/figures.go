package frame

import (
	"bytes"
	"encoding/json"
	"math"

	"plumbcut/geom"
)

// Figures is every computed number of a frame, for other programs and for
// tests. Lengths are millimetres, angles degrees, areas square millimetres,
// all at full precision. World coordinates are x to the right along the wall,
// y into the house from the cladding's outer face, z up from the datum; "out"
// is the distance from the cladding, −y. Keys are only ever added.
type Figures struct {
	Job      JobFigures      `json:"job"`
	Units    UnitFigures     `json:"units"`
	Levels   []LevelFigures  `json:"levels"`
	Setout   SetoutFigures   `json:"setout"`
	Warnings []WarnFigures   `json:"warnings"`
	Members  []MemberFigures `json:"members"` // one per stick
}

// JobFigures names the job.
type JobFigures struct {
	Title  string `json:"title"`
	Number string `json:"number"`
	Client string `json:"client"`
	Site   string `json:"site"`
	Date   string `json:"date"`
	Status string `json:"status"`
	Datum  string `json:"datum"` // what z = 0 is
}

// UnitFigures says in which units the figures are.
type UnitFigures struct {
	Length string `json:"length"` // always "mm"
	Angle  string `json:"angle"`  // always "degree"
	Area   string `json:"area"`   // always "mm2"
	Shown  string `json:"shown"`  // on the drawings: "mm" or "ft-in"
}

// LevelFigures is a named height.
type LevelFigures struct {
	Name string     `json:"name"`
	Z    float64    `json:"z"`
	At   [3]float64 `json:"at"` // a point on that surface
}

// SetoutFigures is what is marked before anything is cut.
type SetoutFigures struct {
	Slope          SlopeFigures    `json:"slope"`
	PlateOuterOut  float64         `json:"plate_outer_out"`
	BeamInnerOut   float64         `json:"beam_inner_out"`
	BeamOuterOut   float64         `json:"beam_outer_out"`
	Rafters        SpacedFigures   `json:"rafters"` // at: centres along the wall
	Battens        SpacedFigures   `json:"battens"` // at: house-side edges down the slope from the plate's outer face
	Posts          []PostFigures   `json:"posts"`
	PlateScrews    []FixingFigures `json:"plate_screws"`
	HeadUnderBeam  float64         `json:"head_under_beam"`
	HeadUnderPlate float64         `json:"head_under_rafters_at_plate"`
	CoveredArea    float64         `json:"covered_area"`
	RafterStartOut float64         `json:"rafter_start_out"` // of the upper end of the rafters' top edges
	RafterEndOut   float64         `json:"rafter_end_out"`   // of the lower end
	Heel           float64         `json:"heel"`             // plumb, from the seat to the top edge where rafters lie over a timber; 0: nowhere
}

// SlopeFigures is the fall between two named arrises.
type SlopeFigures struct {
	Angle  float64 `json:"angle"`
	Ratio  float64 `json:"ratio"` // n of 1:n; 0 when level
	Drop   float64 `json:"drop"`
	Run    float64 `json:"run"`
	Length float64 `json:"length"` // along the slope
	From   Arris   `json:"from"`
	To     Arris   `json:"to"`
}

// SpacedFigures is a row of alike sticks.
type SpacedFigures struct {
	Number  int       `json:"number"`
	Centres float64   `json:"centres"` // from one to the next
	Gap     float64   `json:"gap"`     // clear between two
	At      []float64 `json:"at"`
}

// PostFigures places one post.
type PostFigures struct {
	No           int     `json:"no"`
	Mark         string  `json:"mark"`
	Along        float64 `json:"along"`      // of its centre
	OutCentre    float64 `json:"out_centre"` // of its centre
	Base         Base    `json:"base"`
	Ground       float64 `json:"ground"`
	Bottom       float64 `json:"bottom"` // level of the post's end
	Seat         float64 `json:"seat"`   // level of its top, or of the beam's underside where it runs up beside the beam
	Top          float64 `json:"top"`    // level of its top
	FootingSize  float64 `json:"footing_size"`
	FootingRound bool    `json:"footing_round"`
	HoleBottom   float64 `json:"hole_bottom"`
}

// FixingFigures is one screw or anchor of the wall plate.
type FixingFigures struct {
	Along    float64 `json:"along"`
	Up       float64 `json:"up"`       // above the plate's underside
	Blocking bool    `json:"blocking"` // no stud there
}

// WarnFigures is one warning, at its place in the job file.
type WarnFigures struct {
	Rule    Rule   `json:"rule"`
	Message string `json:"message"`
	Line    int    `json:"line"`
	Column  int    `json:"column"`
}

// MemberFigures is one stick.
type MemberFigures struct {
	Mark     string           `json:"mark"`
	No       int              `json:"no"`
	Kind     Kind             `json:"kind"`
	Quantity int              `json:"quantity"` // sticks of this mark and hand
	Hand     Hand             `json:"hand"`
	Width    float64          `json:"width"`
	Depth    float64          `json:"depth"`
	Round    bool             `json:"round,omitempty"`
	Faces    [4]Face          `json:"faces"`          // the long ones at V=0, V=width, W=0 and W=depth
	Length   float64          `json:"length"`         // long point to long point
	Line     float64          `json:"line,omitempty"` // rafters: the top edge, between plumb cuts
	Ends     [2]EndFigures    `json:"ends"`           // datum end, far end
	Place    PlaceFigures     `json:"place"`
	Features []FeatureFigures `json:"features"`
}

// EndFigures is the cut at one end: through "at" on the arris V=0, W=depth,
// turned by plan across the width and by slope down the depth.
type EndFigures struct {
	Cut   string  `json:"cut"`
	At    float64 `json:"at"`
	Plan  float64 `json:"plan"`
	Slope float64 `json:"slope"`
}

// PlaceFigures is where a stick's own axes lie in the world.
type PlaceFigures struct {
	Origin [3]float64 `json:"origin"`
	U      [3]float64 `json:"u"` // along
	V      [3]float64 `json:"v"` // across the width
	W      [3]float64 `json:"w"` // through the depth
}

// Figures gathers the frame's numbers.
func (f *Frame) Figures() Figures {
	j := f.Job
	out := Figures{
		Job:      JobFigures{j.Project.Title, j.Project.Number, j.Project.Client, j.Project.Site, j.Project.Date, j.Project.Status, j.Levels.Datum},
		Units:    UnitFigures{Length: "mm", Angle: "degree", Area: "mm2", Shown: "mm"},
		Levels:   make([]LevelFigures, len(f.Levels)),
		Setout:   f.setoutFigures(),
		Warnings: make([]WarnFigures, len(f.Warnings)),
		Members:  make([]MemberFigures, len(f.Members)),
	}
	if j.Units == FeetInches {
		out.Units.Shown = "ft-in"
	}
	for i, l := range f.Levels {
		out.Levels[i] = LevelFigures{l.Name, plain(l.Z), triple(l.At)}
	}
	for i, w := range f.Warnings {
		out.Warnings[i] = WarnFigures{w.Rule, w.Message, w.Pos.Line, w.Pos.Column}
	}
	for i, m := range f.Members {
		out.Members[i] = memberFigures(m)
	}
	return out
}

// JSON writes the figures as the figures command prints them.
func (f Figures) JSON() ([]byte, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	err := e.Encode(f)
	return b.Bytes(), err
}

func (f *Frame) setoutFigures() SetoutFigures {
	s, sl := f.Setout, f.Slope
	out := SetoutFigures{
		Slope:          SlopeFigures{degrees(sl.Angle), 0, sl.Drop, sl.Run, sl.Length(), sl.From, sl.To},
		PlateOuterOut:  -s.Rear().Outer,
		BeamInnerOut:   -s.Front().Inner,
		BeamOuterOut:   -s.Front().Outer,
		Rafters:        SpacedFigures{len(s.Rafters), s.Centres, s.Centres - f.Job.Rafters.Section.Width, s.Rafters},
		Battens:        SpacedFigures{At: append([]float64{}, s.Battens...), Number: len(s.Battens), Gap: s.BattenGap},
		Posts:          []PostFigures{},
		PlateScrews:    []FixingFigures{},
		HeadUnderBeam:  s.HeadBeam,
		HeadUnderPlate: s.HeadPlate,
		CoveredArea:    s.Covered,
		RafterStartOut: -s.RafterStart,
		RafterEndOut:   -s.RafterEnd,
	}
	if s.Holds(Over) {
		out.Heel = s.Heel
	}
	if sl.Drop > 0 {
		out.Slope.Ratio = sl.Run / sl.Drop
	}
	if len(s.Battens) > 1 {
		out.Battens.Centres = s.BattenGap + f.Job.Battens.Section.Width
	}
	for i, p := range f.Of(KindPost) {
		spec := f.Job.Posts.At[i]
		holeBottom := p.Place.O.Z
		if footing, ok := f.FootingOf(i); ok {
			holeBottom = footing.Place.O.Z
		}
		out.Posts = append(out.Posts, PostFigures{
			No: p.No, Mark: p.Mark, Along: spec.Along, OutCentre: -p.Place.Point(geom.V(0, 0, p.Section.Depth/2)).Y,
			Base: spec.Base, Ground: spec.Ground, Bottom: p.Place.O.Z, Seat: min(p.Place.O.Z+p.Length, s.Under(i).Bottom), Top: p.Place.O.Z + p.Length,
			FootingSize: spec.Footing.Size, FootingRound: spec.Footing.Round, HoleBottom: holeBottom,
		})
	}
	for _, p := range s.PlateFixings {
		out.PlateScrews = append(out.PlateScrews, FixingFigures(p))
	}
	return out
}

func memberFigures(m Member) MemberFigures {
	out := MemberFigures{
		Mark: m.Mark, No: m.No, Kind: m.Kind, Quantity: m.Quantity, Hand: m.Hand,
		Width: m.Section.Width, Depth: m.Section.Depth, Round: m.Round, Faces: m.Faces(), Length: m.Length,
		Ends:     [2]EndFigures{endFigures(m, FaceStart), endFigures(m, FaceEnd)},
		Place:    PlaceFigures{triple(m.Place.O), triple(m.Place.U), triple(m.Place.V), triple(m.Place.W)},
		Features: make([]FeatureFigures, len(m.Features)),
	}
	if m.Kind == KindRafter {
		out.Line = out.Ends[1].At - out.Ends[0].At
	}
	for i, f := range m.Features {
		out.Features[i] = f.Figures().plain()
	}
	return out
}

// EndCut returns the cut at an end, a square one if no feature says otherwise.
func (m Member) EndCut(end Face) EndCut {
	for _, f := range m.Features {
		if c, ok := f.(EndCut); ok && c.End == end {
			return c
		}
	}
	c := EndCut{End: end, Cut: CutSquare}
	if end == FaceEnd {
		c.At = m.Length
	}
	return c
}

func endFigures(m Member, end Face) EndFigures {
	c := m.EndCut(end)
	return EndFigures{c.Cut, plain(c.At), plain(degrees(c.Plan)), plain(degrees(c.Slope))}
}

// plain turns a negative zero into zero, which reads better.
func plain(v float64) float64 {
	if v == 0 || math.IsNaN(v) {
		return 0
	}
	return v
}

func triple(v geom.Vec) [3]float64 { return [3]float64{plain(v.X), plain(v.Y), plain(v.Z)} }

func (f FeatureFigures) plain() FeatureFigures {
	f.At = plain(f.At)
	for _, m := range []map[string]float64{f.Sizes, f.Angles} {
		for k, v := range m {
			m[k] = plain(v)
		}
	}
	return f
}
