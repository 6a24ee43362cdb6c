package frame

import "plumbcut/geom"

// Frame is the exact model of a job: every stick, every joint between two of
// them, and the things around them. It is built once by Build and then only
// read; all drawings, lists and audits are read off it.
type Frame struct {
	Job      *Job
	Slope    Slope
	Members  []Member // plate, beam, posts, rafters, battens, packers, footings
	Joints   []Joint
	Levels   []Level
	Warnings []Warning
	House    []Solid // wall, returns, openings, deck, ground: context only
}

// Slope is the fall as built.
type Slope struct {
	Angle    float64 // radians below level
	Drop     float64 // between From and To, mm
	Run      float64 // level distance between From and To, mm
	From, To Arris
}

// Kind is the kind of a member.
type Kind string

// The kinds, in the order of Frame.Members.
const (
	KindPlate   Kind = "wall plate"
	KindBeam    Kind = "beam"
	KindPost    Kind = "post"
	KindRafter  Kind = "rafter"
	KindBatten  Kind = "batten"
	KindPacker  Kind = "packer"
	KindFooting Kind = "footing"
)

// Member is one stick of timber (or one footing): a prism with a list of
// features. In its own axes U runs along it from the datum end, V across its
// width and W through its depth, and the prism fills 0…Length × 0…Width ×
// 0…Depth. The feature list is the only truth: its solid, its drawing and its
// place in the lists are read off it.
type Member struct {
	Mark     string // part mark; sticks that are alike share it, e.g. "R1"
	No       int    // place in its kind, from 1, left to right and out from the house
	Kind     Kind
	Hand     Hand
	Section  Section
	Length   float64 // long point to long point
	Place    geom.Axes
	Features []Feature
	Timber   Timber
	Round    bool // a round footing: the section is its diameter

	solid geom.Solid
}

// Solid is the member's exact solid, in the world.
func (m Member) Solid() geom.Solid { return m.solid }

// Hand tells a member from its mirror image.
type Hand string

// The hands. Members that are their own mirror image have none.
const (
	NoHand    Hand = ""
	LeftHand  Hand = "left"
	RightHand Hand = "right"
)

// Face names a side of a member; the name stays when the stick is turned over.
type Face string

// The faces.
const (
	FaceTop    Face = "top"
	FaceBottom Face = "bottom"
	FaceHouse  Face = "house side"
	FaceOuter  Face = "outer side"
	FaceLeft   Face = "left"
	FaceRight  Face = "right"
	FaceStart  Face = "datum end"
	FaceEnd    Face = "far end"
)

// Feature is one piece of work on a member, in the member's own axes. Each
// kind is one file; see DEVELOPERS.md.
type Feature interface {
	// Cutters are the convex volumes that the feature takes away.
	Cutters(m Member) []geom.Convex
	// Bores are the round holes that it makes.
	Bores(m Member) []geom.Bore
	// Figures are its numbers, for the figures file and the drawings.
	Figures() FeatureFigures
}

// FeatureFigures is a feature in numbers, millimetres and degrees.
type FeatureFigures struct {
	Kind   string             `json:"kind"`
	Face   Face               `json:"face"`
	At     float64            `json:"at"` // along the member from the datum end
	Sizes  map[string]float64 `json:"sizes,omitempty"`
	Angles map[string]float64 `json:"angles,omitempty"`
}

// Joint is where two members meet. Whatever the joint needs of both was
// written by its one function, so the two sides fit.
type Joint struct {
	Kind      JointKind
	A, B      int        // indices of Frame.Members: B carries or holds A
	At        geom.Vec   // where a detail should look
	Bearing   geom.Plane // the face that carries, in the world, outward from B; zero: none
	Clearance float64
}

// JointKind names a joint as a detail's title does.
type JointKind string

// Solid is a thing around the frame, drawn light.
type Solid struct {
	Name  string
	Shape geom.Solid
}

// Level is a named height.
type Level struct {
	Name string // names the surface: "top of plate at its outer arris"
	Z    float64
	At   geom.Vec // a point on that surface
}

// Warning is something buildable but doubtful: it goes to the terminal and on
// to a sheet.
type Warning struct {
	Rule    string
	Message string
	Pos     Pos
}
