package frame

// EndScrews are what holds one end of a small timber, or its crossing.
type EndScrews struct {
	Each             int
	Diameter, Length float64 // 0: to be stated
}

// Blocking is the blocks (noggings) that stand between the rafters, in one or
// more rows across the frame. Section.Depth 0: there are none.
type Blocking struct {
	Section Section // Depth upright, Width through
	Timber  Timber
	Set     BlockSet
	Rows    []BlockRow
	Screws  EndScrews // at each end
}

// BlockSet is how blocks stand between rafters.
type BlockSet string

// The ways to set blocks. The zero value is BlockSquare.
const (
	BlockSquare BlockSet = "square" // to the rafters, their tops in the plane of the rafters' top edges
	BlockPlumb  BlockSet = "plumb"  // their upper outer arris in that plane
)

// BlockRow is one row of blocks: over a carrier that the rafters lie over, or
// at a distance.
type BlockRow struct {
	Over string  // "plate", "beam", or empty
	Down float64 // of their middle, down the slope from the plate's outer face
}

// Fascia is the board across the rafters' outer ends. Section.Depth 0: none.
type Fascia struct {
	Section Section // Depth upright, Width its thickness
	Timber  Timber
	Over    float64   // how far it runs past the end rafters at each end
	Screws  EndScrews // into each rafter
}

// Valance is a board that hangs under the beam. Section.Depth 0: none.
type Valance struct {
	Section Section // Depth upright, Width its thickness
	Timber  Timber
	Set     ValanceSet
	Back    float64   // between posts: of its outer face behind theirs
	Below   float64   // on the face: how far it hangs below the beam
	Screws  EndScrews // at each end between posts; into each post on the face
}

// ValanceSet is where a valance hangs.
type ValanceSet string

// The places of valances. The zero value is ValanceBetween.
const (
	ValanceBetween ValanceSet = "between posts" // one in each bay, up under the beam
	ValanceFace    ValanceSet = "on the face"   // one board on the beam's outer face, across the posts
)
