package template

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"plumbcut/geom/frame"
)

// naming is what the frame calls ends and faces; without a frame, what every
// kind of member calls its own.
type naming struct{ of *frame.Frame }

// end is what a builder calls an end of a member: the one that it is measured
// from, or the other.
func (n naming) end(k frame.Kind, datum bool) string {
	end := frame.FaceEnd
	if datum {
		end = frame.FaceStart
	}
	if n.of == nil {
		return k.EndName(end)
	}
	return n.of.EndWord(k, end)
}

// face is what a builder calls a long face of a member.
func (n naming) face(k frame.Kind, f frame.Face) string {
	if n.of == nil {
		return string(f)
	}
	return n.of.FaceWord(k, f)
}

// inwards is the way to the house, or to what is there instead.
func (n naming) inwards(k frame.Kind) string {
	side := n.face(k, frame.FaceHouse)
	if side == string(frame.FaceHouse) {
		return "to the house"
	}
	return "to the " + side
}

// plural names all members of a kind; there is one plate and one beam.
func plural(k frame.Kind) string {
	if k == frame.KindPlate || k == frame.KindBeam {
		return string(k)
	}
	return string(k) + "s"
}

// sentence begins with a capital letter.
func sentence(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	if n == 0 {
		return s
	}
	return string(unicode.ToUpper(r)) + s[n:]
}

// faceName is what a builder calls a face of a member, ends included.
func (n naming) faceName(k frame.Kind, f frame.Face) string {
	switch f {
	case frame.FaceStart, frame.FaceEnd:
		return n.end(k, f == frame.FaceStart)
	}
	return n.face(k, f)
}

// capitals is how a face is named on its flap, to be seen at arm's length.
func (n naming) capitals(k frame.Kind, f frame.Face) string { return strings.ToUpper(n.faceName(k, f)) }
