package frame

// Roof is what covers the battens: sheets as their maker states them, and what
// takes the water off. Nothing of it is sized here.
type Roof struct {
	Sheet     string  // name of the sheet and its profile
	Clear     bool    // light comes through
	Thickness float64 // of the material; 0: to be stated
	Profile   float64 // height of the profile over all
	Width     float64 // of one sheet; 0: there is no roof
	Lap       float64 // of a sheet over the one before it
	Longest   float64 // that is sold; 0: any length
	EndLap    float64 // where one length does not reach
	From      Side    // the side at which the first sheet is laid

	Gap       float64 // from the cladding to the sheets' upper ends, level
	Eave      float64 // level, of the sheets past the frame's outermost timber
	OverLeft  float64 // past the battens' ends
	OverRight float64

	LeastFall float64 // that the maker states, radians; 0: to be stated
	StatedBy  string

	Gutter    Gutter
	Downpipes []Downpipe
	Flashing  Flashing
}

// Gutter hangs in front of the frame's outermost timber.
type Gutter struct {
	Section Section // Width out from the frame; 0: there is none
	Under   float64 // of its rim below the sheets' lower ends
}

// Downpipe stands below the gutter.
type Downpipe struct {
	Along float64 // of its middle
	Size  float64 // diameter
	To    float64 // level of its foot
}

// Flashing covers the gap at the wall.
type Flashing struct {
	Up   float64 // the wall, from the sheets; 0: there is none
	Over float64 // the sheets, down the slope
}
