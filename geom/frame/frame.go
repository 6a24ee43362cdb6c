package frame

import "plumbcut/geom"

// Frame is the exact model of a job: every stick, every joint between two of
// them, and the things around them. It is built once by Build and then only
// read; all drawings, lists and audits are read off it.
type Frame struct {
	Job      *Job
	Slope    Slope
	Setout   Setout
	Members  []Member // in the order of Kinds, each kind by No
	Joints   []Joint
	Levels   []Level
	Warnings []Warning
	Roof     Roofing // without parts when the job has none
	House    []Solid // wall, returns, soffit, deck, ground: context only
}

// Slope is the fall as built, between the arrises that the job names.
type Slope struct {
	Angle    float64 // radians below level
	Drop     float64 // between From and To, mm; midway along where those are not parallel
	Run      float64 // level distance between From and To, mm; the same
	From, To Arris
}

// Member is one stick of timber (or one footing): a prism with a list of
// features. In its own axes U runs along it from the datum end, V across its
// width and W through its depth, and the prism fills 0…Length × 0…Width ×
// 0…Depth (a round one, the cylinder within). The feature list is the only
// truth: its solid, its drawing and its place in the lists are read off it.
// The package comment says which way U, V and W run for each kind.
type Member struct {
	Mark     string // part mark; sticks that are alike share it, e.g. "R1"
	No       int    // place in its kind, from 1, left to right and out from the house
	Kind     Kind
	Hand     Hand
	Quantity int // how many share Mark and Hand
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

// The hands. A member has one only if the frame also has its mirror image:
// the two then share a mark, and the one met first from the left is the left
// hand.
const (
	NoHand    Hand = ""
	LeftHand  Hand = "left"
	RightHand Hand = "right"
)

// Feature is one piece of work on a member, in the member's own axes. Each
// kind is one file, feature_*.go; see DEVELOPERS.md.
type Feature interface {
	// Cutters are the convex volumes that the feature takes away.
	Cutters(m Member) []geom.Convex
	// Bores are the round holes that it makes.
	Bores(m Member) []geom.Bore
	// Mirrored is the same work on the member's mirror image.
	Mirrored(m Member) Feature
	// Figures are its numbers, for the figures file and the drawings. They
	// suffice to make the feature again.
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
// written by its one function, joint_*.go, so the two sides fit.
type Joint struct {
	Kind      JointKind
	A, B      int        // indices of Frame.Members: B carries or holds A; B is −1 for the house
	At        geom.Vec   // where a detail should look
	Bearing   geom.Plane // the face that carries, in the world, outward from B; zero: none
	Area      float64    // of the bearing, mm², bores not deducted
	Clearance float64    // housing width over the timber's width, in all
	Hold      Hold       // of a rafter on its carrier; empty: another joint
}

// Bears reports whether the joint has a bearing face in the model.
func (j Joint) Bears() bool { return j.Bearing != geom.Plane{} && j.B >= 0 }

// JointKind names a joint as a detail's title does.
type JointKind string

// The joints, but for those of the rafters: see RafterJoint.
const (
	JointBeamPost    JointKind = "beam on post"
	JointBeamChecked JointKind = "beam checked into post"
	JointBeamFace    JointKind = "beam bolted to face of post"
	JointBeamBracket JointKind = "beam on post-cap bracket"

	JointBeamTwin        JointKind = "twin beams bolted to post"
	JointBeamTwinChecked JointKind = "twin beams checked into post"
	JointBeamPly         JointKind = "outer twin beam at post"
	JointRafterOverPly   JointKind = "rafter over outer twin beam"

	JointPostConcrete JointKind = "post in concrete"
	JointPostStirrup  JointKind = "post on stirrup"
	JointPostSlab     JointKind = "post on slab"
	JointPostDeck     JointKind = "post on deck"
	JointPlateWall    JointKind = "wall plate on wall"
	JointPostWall     JointKind = "post on wall"
	JointBattenRafter JointKind = "batten on rafter"
	JointLathBatten   JointKind = "lath on batten"
	JointSlatCleat    JointKind = "slat on cleat"
	JointCleatRafter  JointKind = "cleat on rafter"
	JointBlockRafter  JointKind = "block between rafters"
	JointFasciaRafter JointKind = "fascia on rafters"
	JointValancePost  JointKind = "valance at post"
	JointValanceBeam  JointKind = "valance on beam"
	JointBracePost    JointKind = "knee brace to post"
	JointBraceBeam    JointKind = "knee brace to beam"
)

// RafterJoint is the joint of a rafter and the carrier that holds it.
func RafterJoint(k Carrier) JointKind {
	switch k.Hold {
	case Over:
		return JointKind("rafter over " + k.Name)
	case Between:
		return JointKind("rafter hung on " + k.Name)
	}
	return JointKind("rafter housed in " + k.Name)
}

// Solid is a thing around the frame, drawn light.
type Solid struct {
	Name  string
	Shape geom.Solid
	Of    Material // what a section shows it to be made of
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
	Rule    Rule
	Message string
	Pos     Pos
}

// Of returns the members of a kind, in order. The slice is part of f.Members.
func (f *Frame) Of(kind Kind) []Member {
	from := 0
	for from < len(f.Members) && f.Members[from].Kind != kind {
		from++
	}
	to := from
	for to < len(f.Members) && f.Members[to].Kind == kind {
		to++
	}
	return f.Members[from:to]
}

// Member returns the member of a kind with a number from 1, and false when
// there is none.
func (f *Frame) Member(kind Kind, no int) (Member, bool) {
	for _, m := range f.Of(kind) {
		if m.No == no {
			return m, true
		}
	}
	return Member{}, false
}

// Timber is the stick that a carrier is; of several plies the one nearest the
// house.
func (f *Frame) Timber(k Carrier) Member { return f.Members[k.Members[0]] }

// FootingOf is the footing of a post, given by its place in Of(KindPost), and
// false where the post stands on something that is there already. The footing
// has the post's number.
func (f *Frame) FootingOf(post int) (Member, bool) { return f.Member(KindFooting, post+1) }

// Solids returns the solids of all members, by their index.
func (f *Frame) Solids() []geom.Solid {
	out := make([]geom.Solid, len(f.Members))
	for i, m := range f.Members {
		out[i] = m.solid
	}
	return out
}
