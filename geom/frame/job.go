package frame

import (
	"fmt"

	"plumbcut/geom/frame/keys"
	"plumbcut/geom/measure"
)

// Job is what a job file says, with every default filled in and every length
// in millimetres, every angle in radians. Lengths "along" run to the right along the wall from
// the job's own zero, seen standing outside and facing the house; lengths
// "out" run away from the outer face of the cladding; levels are heights above
// the job's datum.
type Job struct {
	File    string // as given on the command line
	Text    []byte // the file itself
	Units   UnitSystem
	Project Project
	Paper   PaperChoice
	Site    Site
	Basis   []Stated
	Levels  Levels
	Wall    Wall
	Plate   Plate    // of a frame against a house
	Rear    RearBeam // of a free-standing one, in its place
	Beam    Beam
	Posts   Posts
	Rafters Rafters
	Battens Battens // Section.Depth is 0 when the job has none
	Laths   Laths   // the same
	Slats   Slats   // Section.Depth is 0 when the job has none
	Roof    Roof    // Width is 0 when the job has none
	Fall    Fall
	Braces  Braces

	RoofStraps RoofStraps

	Blocking Blocking
	Fascia   Fascia
	Valance  Valance

	Stock    Stock
	Supplies Supplies

	Templates TemplateChoice
	Printer   Printer

	given  keys.Given
	habits []keys.Habit
	texts  []located
}

// Pos is where the file gives the value at a path such as "beam.out" or
// "posts.at[2]". A path that the file does not give has the place of the
// nearest parent that it does.
func (j *Job) Pos(path string) Pos { return j.given.Pos(path) }

// Given reports whether the file itself gives the value at a path, rather than
// leaving it to its default.
func (j *Job) Given(path string) bool { return j.given.Has(path) }

// UnitSystem is how the drawings give figures and how bare numbers are read.
type UnitSystem = measure.Units

// The unit systems.
const (
	Millimetres = measure.Millimetres
	FeetInches  = measure.FeetInches // bare numbers are inches
)

// Project fills the title block, per ISO 7200.
type Project struct {
	Title, Number, Client, Site string
	Owner                       string // legal owner of the drawings
	DrawnBy, ApprovedBy         string
	Date                        string // ISO 8601, or empty
	Status                      string // one of Statuses
	Revisions                   []Revision
}

// Revision is one line of the revision table.
type Revision struct{ Rev, Date, Note, By string }

// PaperChoice is the sheet size and scale wanted.
type PaperChoice struct {
	Size  string  // a name that draw.PaperByName knows, e.g. "A3"
	Scale float64 // n of 1:n for plan, elevations and section; 0 is automatic
}

// Site says where the job stands.
type Site struct {
	North      float64 // radians clockwise from "into the house"
	NorthGiven bool
	Boundaries []Boundary
	KeepOuts   []KeepOut // where no post may stand
	References []Reference
}

// Reference is something on the site that the corner pegs of a free-standing
// frame are measured from: square off the side of the frame that looks to it.
type Reference struct {
	What     string
	Side     Side
	Distance float64
}

// Boundary is the clear distance from the frame's extent to a site boundary.
type Boundary struct {
	Side     Side
	Distance float64
}

// Side is a direction seen standing outside and facing the house.
type Side string

// The sides.
const (
	Left  Side = "left"
	Right Side = "right"
	Out   Side = "front"
	Rear  Side = "rear"
)

// Stated is a design input that somebody outside this program has stated.
// An empty Value prints as "to be stated".
type Stated struct{ What, Value, By string }

// Levels names the datum and the levels that the job stands on.
type Levels struct {
	Datum    string        // what z = 0 is, e.g. "finished deck at the wall"
	Ground   float64       // finished ground at the posts unless a post says otherwise
	Line     []GroundPoint // the finished ground along the frame, left to right; empty: straight from post to post
	Deck     float64       // top of deck or paving under the frame
	DeckOut  float64       // how far out the deck runs; 0 is none
	Eye      float64       // eye height above the deck or ground, for the sight line
	HeadRoom float64       // least height under the beam before a warning
}

// GroundPoint is a point of the finished ground along the frame. Two at one
// place are a step.
type GroundPoint struct{ Along, Level float64 }

// Wall is the house wall that the plate is fixed to.
type Wall struct {
	Kind      Backing
	From, To  float64    // extent along
	Cladding  float64    // thickness; of render on masonry, of the leaf of a veneer
	Cavity    float64    // behind a veneer
	CutBack   CutAway    // of cladding that is cut back
	Flashing  string     // over the plate there, as stated; empty: to be stated
	Fascia    EavesBoard // that the plate is fixed to
	StudWidth float64    // along the wall
	Studs     []float64  // centres, ascending
	Returns   []Return
	Openings  []Opening
	Soffit    float64 // level of its underside; 0 with SoffitOut 0 is none
	SoffitOut float64 // how far out from the cladding it runs
}

// CutAway is how far cladding is cut back beyond a timber on the wall.
type CutAway struct{ Above, Below, Ends float64 }

// EavesBoard is the fascia, the board at the house's eaves. The wall stands back from it.
type EavesBoard struct {
	Thickness float64
	Depth     float64 // its height
	Underside float64 // level
	Eave      float64 // from its outer face back to the wall's cladding
	Gutter    Eaves   // Out is 0 where there is none near
}

// Eaves is the gutter along the house's fascia.
type Eaves struct{ Underside, Height, Out float64 }

// Return is a wall of the house that comes out towards the viewer at a corner.
type Return struct {
	Side   Side    // Left: its face looks right, at the left end of the job
	At     float64 // of its cladding face, along
	Length float64 // out
}

// Opening is a door or window in the wall.
type Opening struct {
	Kind       string // "door" or "window"
	Name       string
	From, To   float64 // along
	Sill, Head float64 // levels
}

// Section is an actual, dressed size. Depth is the upright measure of a timber
// that lies or slopes; for a post it runs out from the wall and Width along it.
type Section struct{ Depth, Width float64 }

// String gives "depth × width" in millimetres.
func (s Section) String() string { return fmt.Sprintf("%g × %g", s.Depth, s.Width) }

// Timber is what a member is made of. Empty fields print as "to be stated".
type Timber struct {
	Species, Grade, Treatment, Finish, Nominal string

	Density      float64 // kg/m³, as built in
	DensityGiven bool    // the job file states it
}

// Plate is the wall plate.
type Plate struct {
	Section  Section
	Timber   Timber
	From, To float64
	Top      float64 // level
	Packer   Packer
	Hold     Hold    // how it holds the rafters
	Housing  float64 // depth of the rafter housings
	Drop     float64 // of the rafter's top below the plate's top, at the plate's outer face
	Fixing   Fixing
}

// Packer holds a timber off the cladding so that water drains.
type Packer struct {
	Thickness float64 // 0: none
	Width     float64 // along the wall
	Height    float64
}

// Fixing is the screws or anchors that hold a timber to the wall.
type Fixing struct {
	Screw      float64 // diameter
	Length     float64
	Hole       float64 // clearance hole through the timber
	Spacing    float64 // greatest, centre to centre along the timber
	FromRafter float64 // least, screw centre to side of rafter housing
	Rows       Rows    // how they stand on the plate
	RowEdge    float64 // of two rows, from the plate's nearer edge
	FromEdge   float64 // least, anchor to an edge of the wall; 0: to be stated
	Stated     string  // what others have stated of it, such as the kind of anchor
}

// Rows is how fixings stand across a plate. The zero value is OneRow.
type Rows string

// The rows.
const (
	OneRow    Rows = "one"       // along its middle
	Staggered Rows = "staggered" // high and low by turns
)

// Beam is the front beam.
type Beam struct {
	Section  Section
	Timber   Timber
	From, To float64
	Out      float64 // of its outer face, from the cladding, at its left end
	OutRight float64 // the same at its right end; 0: no other
	Hold     Hold    // how it holds the rafters
	Housing  float64
	Drop     float64 // of the rafter's top below the beam's top, at the beam's inner face
}

// RearBeam is the beam that a free-standing frame has in place of the plate. Out
// is not used: its outer face is the base line.
type RearBeam struct {
	Beam
	Top float64 // level
}

// Freestanding reports whether the frame stands on two rows of posts. Lengths
// out then run from the base line, the outer face of the rear beam.
func (j *Job) Freestanding() bool { return j.Rear.Section.Depth > 0 }

// Posts carry the beam.
type Posts struct {
	Section Section
	Timber  Timber
	Meet    Meet    // how the beam meets them
	Chamfer float64 // slope of the weathering behind the beam, radians; 0: level
	Rod     Rod
	At      []Post // those under the beam, ascending along, then those under the rear beam
	Rear    int    // how many of them stand under the rear beam
}

// Post is one post. Every field is resolved from the job's defaults.
type Post struct {
	Along   float64 // of its centre, on the line of its beam
	Ground  float64 // finished ground there, level
	Wall    Side    // the return that it is fixed to; empty: free-standing
	Packer  Packer
	Fixing  Fixing
	Base    Base
	Footing Footing // all 0 where none is dug
	Shoe    Shoe    // all 0 where a footing is
}

// Base is what a post stands in or on.
type Base string

// The bases.
const (
	InConcrete Base = "concrete"
	OnStirrup  Base = "stirrup"
	OnSlab     Base = "slab" // that is there already
	OnDeck     Base = "deck" // over a joist or bearer of it
)

// Footing is the concrete below one post.
type Footing struct {
	Round  bool
	Size   float64 // diameter or side
	Depth  float64 // of the hole, below finished ground
	Pad    float64 // of concrete below the post's end
	Collar float64 // top of concrete above ground, at the post
	Stand  float64 // clearance of a post's end above its footing on a stirrup
}

// Shoe holds a post's end on a slab or deck.
type Shoe struct {
	Stand    float64 // of the post's end above it
	Fixings  int     // anchors or bolts that hold it down; 0: to be stated
	Diameter float64 // of them; 0: to be stated
	Length   float64 // of them; 0: to be stated
	FromEdge float64 // least, post to the edge of the slab or deck; 0: to be stated
	Stated   string  // what others have stated of it
}

// Rod is a threaded rod set upright through beam and into post.
type Rod struct {
	Diameter float64 // 0: none
	Hole     float64
	IntoPost float64
	Above    float64 // how far it stands above the beam, for washer and nut
	Bar      float64 // length of the bars that it is cut from
}

// Rafters run from plate to beam.
type Rafters struct {
	Section   Section
	Timber    Timber
	Number    int     // 0: from Centres
	Centres   float64 // greatest
	Ends      EndRule
	Inset     float64 // outer face of the end rafter from the end, for EndsInset
	Clearance float64 // housing width over the rafter's width, in all
	Seat      Seat
	Strap     Strap
	Heel      float64 // plumb, from the seat on a timber that they lie over to the top edge; 0: see Setout.Heel
	Head      float64 // how far they run past the inner face of a plate that they lie over
	Tail      Tail
}

// Tail is what runs past a beam that the rafters lie over.
type Tail struct {
	Overhang float64 // level, from the beam's outer face to the end of the top edge
	Shape    TailShape
	Nose     float64 // height that the end keeps: plumb of a bevelled one, square to the top edge of a rounded one; 0: see Setout
	Splay    float64 // of the bevel, from the level, radians
	Curve    float64 // how far back an ogee comes; 0: as far as it is high
	Profile  []EndPoint
}

// TailShape is the shape of a tail's end.
type TailShape string

// The shapes of tails. The zero value is TailPlumb.
const (
	TailSquare   TailShape = "square"   // cut square to the rafter
	TailPlumb    TailShape = "plumb"    // cut plumb
	TailBevelled TailShape = "bevelled" // plumb above, splayed back below
	TailQuarter  TailShape = "quarter round"
	TailOgee     TailShape = "ogee"    // hollow under the nose, then round to the underside
	TailProfile  TailShape = "profile" // as its points say
)

// EndRule places the first and last rafter against the ends of the plate and
// beam, whichever is shorter.
type EndRule string

// The end rules.
const (
	EndsFlush   EndRule = "flush"   // outer faces flush with the ends
	EndsCentred EndRule = "centred" // centre lines on the ends
	EndsInset   EndRule = "inset"   // outer faces a stated distance in
)

// Seat is the bearing at the bottom of a housing.
type Seat string

// The seats.
const (
	SeatFollows Seat = "follows the fall" // the housing's floor lies along the rafter
	SeatLevel   Seat = "level"            // the rafter's end is cut to a level seat
)

// Battens lie across the rafters. Positions are measured along the slope.
type Battens struct {
	Section             Section
	Timber              Timber
	Number              int     // 0: from Gap or Shade
	Gap                 float64 // greatest clear gap
	Shade               float64 // part of the area covered, 0 to 1
	First               float64 // near edge of the first, down the slope from the plate's outer face
	Last                float64 // far edge of the last, up the slope from the beam's inner face
	OverLeft, OverRight float64 // beyond the outer faces of the end rafters
	Lie                 Lie
	Check               Checks // for LieChecked
	Screws              BattenScrews
}

// Checks are the depths of the checks where battens and rafters cross, square to
// the slope, and how much wider each is than what lies in it, in all.
type Checks struct{ Rafter, Batten, Clearance float64 }

// Fall is the slope of the rafters' top edges and between which arrises it is
// measured.
type Fall struct {
	Kind     FallKind
	Value    float64 // radians, n of 1:n, or millimetres of drop
	From, To Arris
}

// FallKind is the way in which a fall is given.
type FallKind string

// The kinds of fall.
const (
	FallAngle FallKind = "angle"
	FallRatio FallKind = "ratio"
	FallDrop  FallKind = "drop"
)

// Arris is a named plumb line on the section, where the line of the rafters'
// top edges is met.
type Arris string

// The arrises, from the house outwards.
const (
	WallFace   Arris = "wall face"
	PlateInner Arris = "plate inner arris"
	PlateOuter Arris = "plate outer arris"
	BeamInner  Arris = "beam inner arris"
	BeamOuter  Arris = "beam outer arris"

	RearOuter Arris = "rear beam outer arris"
	RearInner Arris = "rear beam inner arris"
)

// Statuses are the issue statuses that a sheet may carry.
func Statuses() []string {
	return []string{"preliminary", "for client review", "for consent", "for construction", "as built"}
}
