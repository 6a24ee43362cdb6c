package template

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"plumbcut/geom/frame"
)

// endName is what a builder calls an end of a member: the one that it is
// measured from, or the other.
func endName(k frame.Kind, datum bool) string {
	if datum {
		return k.EndName(frame.FaceStart)
	}
	return k.EndName(frame.FaceEnd)
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

// faceName is what a builder calls a face of a member.
func faceName(k frame.Kind, f frame.Face) string {
	switch f {
	case frame.FaceStart:
		return endName(k, true)
	case frame.FaceEnd:
		return endName(k, false)
	}
	return string(f)
}

// capitals is how a face is named on its flap, to be seen at arm's length.
func capitals(k frame.Kind, f frame.Face) string { return strings.ToUpper(faceName(k, f)) }
