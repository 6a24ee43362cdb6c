package frame

import "math"

// Braces are knee braces: short timbers across the corners of posts and beam.
// All of a job are alike. Section.Depth 0: there are none.
//
//	─────────────────────── underside of the beam
//	│←     Along     →╱ ╱
//	│ Down          ╱ ╱
//	│             ╱ ╱      the legs are measured to the longer,
//	│           ╱ ╱        lower edge, where it meets the faces
//	│ post    ╱ ╱
type Braces struct {
	Section     Section // Depth in the plane of posts and beam, Width out from the wall
	Timber      Timber
	Down, Along float64 // from the corner to the lower edge: down the post, along the beam
	Joint       BraceJoint
	Housing     float64   // depth of their housings in post and beam
	Clearance   float64   // of a housing's width over theirs
	Screws      EndScrews // at each end of those butted or housed
	Bolt        LapBolt
	At          []BraceAt // where they stand; empty: on both sides of every post that has another beside it
}

// BraceJoint is how braces meet post and beam.
type BraceJoint string

// The joints of braces. The zero value is BraceButted.
const (
	BraceButted BraceJoint = "butted" // their ends lie flat against the faces
	BraceHoused BraceJoint = "housed" // let in to both
	BraceLapped BraceJoint = "lapped" // on the outer faces, bolted through
)

// LapBolt is what holds timbers that lap.
type LapBolt struct{ Diameter, Hole float64 }

// BraceAt is a side of a post, numbered from 1. Side empty: both.
type BraceAt struct {
	Post int
	Side Side
}

// There reports whether there are any.
func (b Braces) There() bool { return b.Section.Depth > 0 }

// Angle is the angle of the braces from the level, radians.
func (b Braces) Angle() float64 { return math.Atan2(b.Down, b.Along) }

// Edge is the length of their lower edges between post and beam.
func (b Braces) Edge() float64 { return math.Hypot(b.Down, b.Along) }

// OnPost is the plumb height that their depth takes up on a post.
func (b Braces) OnPost() float64 { return b.Section.Depth / math.Cos(b.Angle()) }

// OnBeam is the level length that their depth takes up under the beam.
func (b Braces) OnBeam() float64 { return b.Section.Depth / math.Sin(b.Angle()) }
