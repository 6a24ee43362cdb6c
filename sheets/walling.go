package sheets

import (
	"fmt"
	"math"
	"slices"

	"plumbcut/draw"
	"plumbcut/geom/frame"
)

// walling is what the sheets say of one kind of thing that the plate, and posts
// beside a return, are fixed to. Each has one entry in wallings, in a file
// walling_*.go; no sheet asks what the wall is.
type walling struct {
	face string // what distances out are measured from: "cladding"
	// find is what is looked for before anything is marked, as a step of work.
	find func(m *maker) string
	// marked says where a fixing goes that the drawings place otherwise.
	marked func(m *maker) string
	// drive is how a fixing is set, as a step of work, and prove what is tried
	// before all are.
	drive func(m *maker) string
	prove string
	care  string // beside that step
	plan  string // on the framing plan
	look  string // what is measured of the house, to follow "how far the wall bows"
	// hold is what the holes in the plate wait for.
	hold    string
	caution string // on the cover
	// into is said of a fixing in the detail, and post of one through a post.
	into func(m *maker) string
	post string
	// titled is the detail's title where the plate is on no wall; empty: as the
	// joint is called.
	titled string
	// beyond is how far below and above the plate the detail shows the wall; nil:
	// no farther than usual.
	beyond func(f plateFixed) (below, above float64)
	over   func(f plateFixed, p *page, v *draw.View) // what the detail adds to the model
	first  func(f plateFixed, n *draw.NoteColumn)    // its first notes
	// clad is said in the detail of what stands before the piece that holds.
	clad string
	// asks are the questions that the cover puts to whoever answers for the
	// fixing.
	asks []string
}

// wallings lists what is said of each.
func wallings(k frame.Backing) walling {
	switch k {
	case frame.CutBack:
		return cutBackWalling()
	case frame.SolidMasonry:
		return masonryWalling()
	case frame.OnConcrete:
		return concreteWalling()
	case frame.OnUnfilled:
		return unfilledWalling()
	case frame.OnVeneer:
		return veneerWalling()
	case frame.OnFascia:
		return fasciaWalling()
	}
	return studWalling()
}

// walling is what is said of the job's own wall.
func (m *maker) walling() walling { return wallings(m.job.Wall.Kind) }

// fixer is what holds the plate to the wall, in a word.
func (m *maker) fixer() string {
	if m.job.Wall.Fixing() == frame.Anchor {
		return frame.UseAnchor
	}
	return frame.UseScrew
}

// Fixer starts a sentence with it.
func (m *maker) Fixer() string { return upperFirst(m.fixer()) }

// studs names what fixings go into one by one, as the title of a row.
func (m *maker) studs() string { return m.job.Wall.StudName() + "s" }

// from titles a row of distances out: "out from the cladding" after "out ".
func (m *maker) from() string { return "from the " + m.setting().from }

// studless reports whether the wall has studs that are not known.
func (m *maker) studless() bool {
	return m.job.Wall.StudName() != "" && len(m.job.Wall.Studs) == 0
}

// needsStuds reports whether any fixing of the plate wants a stud where there is
// none.
func (m *maker) needsStuds() bool {
	return len(m.job.Wall.Studs) > 0 && slices.ContainsFunc(m.frame.Setout.PlateFixings, func(p frame.FixingPoint) bool { return p.Blocking })
}

// sunk is how far behind the wall's face timbers lie on it.
func (m *maker) sunk() float64 {
	return m.rear().Inner + m.job.Plate.Packer.Thickness
}

// offWhat names what a packer holds the plate off.
func (m *maker) offWhat() string {
	if m.sunk() > 0 {
		return "frame"
	}
	return m.walling().face
}

// onFace says where L and R are marked.
func (m *maker) onFace() string {
	if m.job.Wall.Fascia.Eave > 0 {
		return "on pegs, plumb under the outer face of the fascia"
	}
	return "on the face of the " + m.walling().face
}

// sealWords say where a fixing is sealed, to follow what it goes through.
func (m *maker) sealWords() string {
	if m.sunk() > 0 {
		return ""
	}
	return ": seal it at the " + m.walling().face
}

// statedAfter is what others have stated of a fixing, to follow its size.
func (m *maker) statedAfter(x frame.Fixing) string {
	if x.Stated == "" {
		return ""
	}
	return ". As stated: " + x.Stated
}

// rowsUp are the heights of the rows of fixings over the plate's underside, the
// upper first.
func (m *maker) rowsUp() []float64 {
	var out []float64
	for _, f := range m.frame.Setout.PlateFixings {
		if !slices.ContainsFunc(out, func(u float64) bool { return math.Abs(u-f.Up) < sameStick }) {
			out = append(out, f.Up)
		}
	}
	return out
}

// rowWords say how the fixings stand across the plate, if not in its middle.
func (m *maker) rowWords() string {
	if len(m.rowsUp()) < 2 {
		return ""
	}
	return fmt.Sprintf(", high and low by turns, %s from the edges", m.saidTape(m.job.Plate.Fixing.RowEdge))
}

// rowNote says what the view of the plate from above shows.
func (m *maker) rowNote() string {
	if m.job.Wall.StudName() == "" {
		return fmt.Sprintf("seen from above, its %ss", m.fixer())
	}
	return fmt.Sprintf("seen from above, its %s and %ss", m.studs(), m.fixer())
}

// careOfWall is the caution beside the fixing of the plate.
func careOfWall(m *maker) string { return m.walling().care }

// questions are what the cover asks of whoever answers for the design.
func (m *maker) questions() []string {
	out := m.walling().asks
	for _, b := range m.basings() {
		out = append(out, b.asks...)
	}
	return out
}

// wallPieces names the pieces of the house that stand behind the plate.
func wallPieces() []string {
	return []string{frame.HouseCladding, frame.HouseWall, frame.HouseFascia, frame.HouseGutter, frame.HouseSoffit}
}

// frontPieces names those that a view from the front shows: the wall itself
// only where the cladding does not hide it.
func (m *maker) frontPieces() []string {
	if m.job.Wall.Kind == frame.OnStuds {
		return []string{frame.HouseCladding, frame.HouseSoffit}
	}
	return wallPieces()
}

// topPieces names the pieces of the house whose tops a view from above shows
// behind the frame.
func (m *maker) topPieces() []string {
	switch {
	case m.job.Wall.Fascia.Depth > 0:
		return []string{frame.HouseFascia}
	case m.job.Wall.Cladding == 0:
		return []string{frame.HouseWall}
	}
	return []string{frame.HouseCladding}
}

// topBack is the world y to which they are shown.
func (m *maker) topBack() float64 {
	if y := m.job.Wall.Skin(); y > 0 {
		return y
	}
	return wallBehind
}

// edgeWords say how far anchors stay from the edges of the wall.
func (m *maker) edgeWords(x frame.Fixing) string {
	if x.FromEdge == 0 {
		return "Distance from every edge of the wall and of openings: " + toBeStated + "."
	}
	return "At least " + m.said(x.FromEdge) + " from every edge of the wall and of openings, as stated."
}
