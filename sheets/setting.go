package sheets

import (
	"fmt"
	"strings"

	"plumbcut/geom/frame"
)

// setting is how the sheets speak of where a frame stands: what its lengths out
// run from, and which way is which. Another place to stand is another one.
type setting struct {
	from       string // where lengths out run from, to follow "from the"
	outRow     string // title of the row of those
	stringFrom string // where the string is measured from, with its article
	base       string // what is squared off, with its article
	seen       string // how a front is seen
	hands      string // from where left is left
	behind     string // what is beyond the top of a plan
	toward     string // which way the arrow there points
	outside    string // name of a view of a face that looks to the front
	inside     string // and of one that looks to the rear
	edge       string // of a batten, the one that is set out
	nearEdge   string // and where that is, to follow "the"
	lineOf     string // the level line that posts are cut to, with its article
	alongside  string // how the section looks
	endOn      string // how an end is seen, with the side
	eye        string // where the eye of the line of sight is
	around     string // what the picture shows beside the frame
	measure    string // what waits for the site
	hazards    string // what is looked for before work
	slip       string // what a slip of a row of posts is along
	area       string // what the plan area runs from
	fixedTo    string // what a designer reviews of the frame's hold
	again      string // from where a level is checked once more
}

// setting is that of the frame.
func (m *maker) setting() setting {
	if m.job.Freestanding() {
		return freeSetting()
	}
	return houseSetting(m)
}

func houseSetting(m *maker) setting {
	wall := m.walling()
	return setting{
		from: wall.face, outRow: "out from the " + wall.face, stringFrom: "the face of the " + wall.face, base: "the wall",
		seen: "seen standing outside, facing the house", hands: "Left and right are as seen standing outside, facing the house.",
		behind: "house", toward: "house this side", outside: "From outside", inside: "From the house side",
		edge: "house-side edge", nearEdge: "edge nearest the house", lineOf: "the plate's level line",
		alongside: "looking to the right along the wall", endOn: "seen along the wall from its %s end", eye: "the wall",
		around:  "House, deck and walls are",
		measure: "Measure the house before cutting: how far the wall bows, " + wall.look + ", and the distance from wall to beam at every rafter. Hold the rafters' front cuts and the post tops until that is done.",
		hazards: "Before drilling or digging find cables, pipes and buried services. Older claddings and paints may hold asbestos or lead: have them tested.",
		slip:    "Slip along the wall", area: "wall", fixedTo: "Fixing to house", again: "from the house",
	}
}

func freeSetting() setting {
	return setting{
		from: "base line", outRow: "out", stringFrom: "the base line", base: "the base line",
		seen: "seen standing in front", hands: "Left and right are as seen standing in front, looking to the rear.",
		behind: "rear", toward: "rear of the frame", outside: "From the front", inside: "From the rear",
		edge: "rear edge", nearEdge: "edge nearest the rear", lineOf: "the level line",
		alongside: "looking to the right along the beams", endOn: "seen along the beams from their %s end", eye: "the base line",
		around:  "Ground and paving are",
		measure: "Measure the site before cutting: the ground at every post, and the distance from beam to beam at every rafter. Hold the rafters' front cuts and the post tops until that is done.",
		hazards: "Before digging find cables, pipes and other buried services.",
		slip:    "Slip along the front", area: "rear", fixedTo: "Bracing", again: "from the datum",
	}
}

// face is one of a carrier's faces in words, given its world y: "the plate's
// outer face".
func face(k frame.Carrier, y float64) string {
	return fmt.Sprintf("the %s's %s face", k.Short, k.FaceWord(y))
}

// battenDatum is the face down the slope from which battens are set out.
func (m *maker) battenDatum() string { return face(m.rear(), m.rear().Outer) }

// tapeArris is the arris of the rear carrier that the tapes go from.
func (m *maker) tapeArris() string {
	return fmt.Sprintf("the %s's top %s arris", m.rear().Short, m.rear().FaceWord(m.tapeFace()))
}

// placeWords say where the fixed points are: on the wall, or pegs that are
// measured from what the job states.
func (m *maker) placeWords(apart string) []string {
	if !m.job.Freestanding() {
		return []string{fmt.Sprintf("Mark L and R %s, plumb under the ends of the wall plate, %s apart.", m.onFace(), apart)}
	}
	if len(m.job.Site.References) == 0 {
		return []string{fmt.Sprintf("Nothing states where the frame stands: agree it with the owner. Then drive pegs L and R, %s apart, plumb under the rear corners of the rear beam: the base line goes from one to the other, along the outer faces of the rear posts.", apart)}
	}
	var from []string
	for _, r := range m.job.Site.References {
		from = append(from, fmt.Sprintf("%s %s %s", m.said(r.Distance), m.awayFrom(r.Side), r.What))
	}
	return []string{fmt.Sprintf("Drive pegs L and R, %s apart, plumb under the rear corners of the rear beam: %s. The base line goes from one to the other, along the outer faces of the rear posts.", apart, strings.Join(from, "; "))}
}

// awayFrom says what of the frame is so far from a reference on a side of it.
func (m *maker) awayFrom(s frame.Side) string {
	switch s {
	case frame.Left:
		return "from L, to its left, to the"
	case frame.Right:
		return "from R, to its right, to the"
	case frame.Rear:
		return "from the base line, to its rear, to the"
	}
	return "from the front string, in front of it, to the"
}
