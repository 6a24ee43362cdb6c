package fonts

import (
	"cmp"
	"encoding/binary"
	"maps"
	"slices"
)

// Subset is a TrueType file with only the given characters, in any order; ones
// that the font lacks are left out. The same characters give the same bytes.
//
// It leaves out the instructions for coarse screens, which are half of the
// file: at the size of a drawing's letters they change nothing.
func (f *Face) Subset(chars []rune) []byte {
	s := subset{face: f, ids: map[uint16]uint16{}}
	s.choose(chars)
	glyf, loca := s.outlines()
	return assemble([]table{
		{"OS/2", f.tables["OS/2"]},
		{"cmap", s.cmap()},
		{"glyf", glyf},
		{"head", s.head()},
		{"hhea", patched(f.tables["hhea"], 34, uint16(len(s.old)))},
		{"hmtx", s.metrics()},
		{"loca", loca},
		{"maxp", patched(patched(f.tables["maxp"], 4, uint16(len(s.old))), 26, 0)},
		{"name", f.names()},
		{"post", post(f.tables["post"])},
	})
}

// subset renumbers the glyphs that are kept.
type subset struct {
	face  *Face
	chars []rune            // sorted, all in the font
	old   []uint16          // new number → old one, ascending; 0 is for missing characters
	ids   map[uint16]uint16 // old number → new one
}

func (s *subset) choose(chars []rune) {
	keep := map[uint16]bool{}
	s.keep(keep, 0)
	for _, r := range chars {
		if g, ok := s.face.Glyph(r); ok {
			s.chars = append(s.chars, r)
			s.keep(keep, g.ID)
		}
	}
	slices.Sort(s.chars)
	s.chars = slices.Compact(s.chars)
	s.old = slices.Sorted(maps.Keys(keep))
	for i, id := range s.old {
		s.ids[id] = uint16(i)
	}
}

// keep adds a glyph and those that it is composed of.
func (s *subset) keep(keep map[uint16]bool, id uint16) {
	if keep[id] {
		return
	}
	keep[id] = true
	eachComponent(s.face.outline(id), func(at int) {
		s.keep(keep, u16(s.face.outline(id), at+2))
	})
}

// Flags of a component of a composed glyph.
const (
	argsAreWords     = 0x0001
	hasScale         = 0x0008
	moreComponents   = 0x0020
	hasXYScale       = 0x0040
	hasTwoByTwo      = 0x0080
	haveInstructions = 0x0100
)

// eachComponent visits where each component of a composed glyph starts and
// returns where the last one ends; 0 for a glyph that is not composed.
func eachComponent(outline []byte, visit func(at int)) int {
	if len(outline) < 10 || i16(outline, 0) >= 0 {
		return 0
	}
	for at := 10; ; {
		visit(at)
		flags := u16(outline, at)
		at += 6
		if flags&argsAreWords != 0 {
			at += 2
		}
		switch {
		case flags&hasScale != 0:
			at += 2
		case flags&hasXYScale != 0:
			at += 4
		case flags&hasTwoByTwo != 0:
			at += 8
		}
		if flags&moreComponents == 0 {
			return at
		}
	}
}

// outlines builds glyf and loca.
func (s *subset) outlines() (glyf, loca []byte) {
	for _, id := range s.old {
		loca = binary.BigEndian.AppendUint16(loca, uint16(len(glyf)/2))
		glyf = append(glyf, s.outline(id)...)
		if len(glyf)%2 != 0 {
			glyf = append(glyf, 0)
		}
	}
	return glyf, binary.BigEndian.AppendUint16(loca, uint16(len(glyf)/2))
}

// outline is one glyph without instructions and with new component numbers.
func (s *subset) outline(id uint16) []byte {
	from := s.face.outline(id)
	if len(from) < 10 {
		return nil
	}
	if end := eachComponent(from, func(int) {}); end > 0 {
		to := slices.Clone(from[:end])
		eachComponent(from, func(at int) {
			binary.BigEndian.PutUint16(to[at:], u16(from, at)&^haveInstructions)
			binary.BigEndian.PutUint16(to[at+2:], s.ids[u16(from, at+2)])
		})
		return to
	}
	at := 10 + 2*int(i16(from, 0)) // behind the ends of the contours
	size := int(u16(from, at))
	to := append(slices.Clone(from[:at]), 0, 0)
	return append(to, from[at+2+size:]...)
}

func (s *subset) metrics() []byte {
	var out []byte
	for _, id := range s.old {
		out = append(out, s.face.metric(id)...)
	}
	return out
}

// head keeps the date of the font itself, and says that loca is short.
func (s *subset) head() []byte {
	head := patched(s.face.tables["head"], 50, 0)
	binary.BigEndian.PutUint32(head[8:], 0) // the checksum, set by assemble
	return head
}

// cmap maps runs of characters whose glyphs follow each other.
func (s *subset) cmap() []byte {
	type run struct{ first, last, delta uint16 }
	var runs []run
	for _, r := range s.chars {
		g, _ := s.face.Glyph(r)
		delta := s.ids[g.ID] - uint16(r)
		if n := len(runs); n > 0 && runs[n-1].last+1 == uint16(r) && runs[n-1].delta == delta {
			runs[n-1].last++
			continue
		}
		runs = append(runs, run{uint16(r), uint16(r), delta})
	}
	runs = append(runs, run{0xFFFF, 0xFFFF, 1}) // the format wants it
	n := len(runs)
	power, log := halving(n)
	words := []uint16{0, 1, 3, 1, 0, 12, // one subtable, Windows Unicode, 12 bytes on
		4, uint16(16 + 8*n), 0, uint16(2 * n), uint16(2 * power), uint16(log), uint16(2 * (n - power))}
	for _, r := range runs {
		words = append(words, r.last)
	}
	words = append(words, 0)
	for _, r := range runs {
		words = append(words, r.first)
	}
	for _, r := range runs {
		words = append(words, r.delta)
	}
	words = append(words, make([]uint16, n)...) // no tables of glyphs
	var out []byte
	for _, w := range words {
		out = binary.BigEndian.AppendUint16(out, w)
	}
	return out
}

// halving is the greatest power of two within n and its logarithm, which the
// format stores to help a binary search.
func halving(n int) (power, log int) {
	for power = 1; 2*power <= n; power *= 2 {
		log++
	}
	return power, log
}

// names keeps the copyright notice (0) and what the face is called (1, 2, 4
// and 6), in the Windows form.
func (f *Face) names() []byte {
	const windows = 3
	from := f.tables["name"]
	var records, text []byte
	for i := range int(u16(from, 2)) {
		rec := from[6+12*i:][:12]
		id := u16(rec, 6)
		if u16(rec, 0) != windows || id == 3 || id == 5 || id > 6 {
			continue
		}
		start := int(u16(from, 4)) + int(u16(rec, 10))
		records = append(records, rec[:10]...)
		records = binary.BigEndian.AppendUint16(records, uint16(len(text)))
		text = append(text, from[start:start+int(u16(rec, 8))]...)
	}
	var out []byte
	for _, w := range []uint16{0, uint16(len(records) / 12), uint16(6 + len(records))} {
		out = binary.BigEndian.AppendUint16(out, w)
	}
	return append(append(out, records...), text...)
}

// post is the form that lists no glyph names.
func post(from []byte) []byte {
	out := slices.Clone(from[:32])
	binary.BigEndian.PutUint32(out, 0x00030000)
	return out
}

// patched is a copy of a table with one number changed.
func patched(from []byte, at int, value uint16) []byte {
	out := slices.Clone(from)
	binary.BigEndian.PutUint16(out[at:], value)
	return out
}

type table struct {
	tag  string
	data []byte
}

// assemble writes the file: the directory, then the tables, each on a multiple
// of four bytes, and last the checksum over all.
func assemble(tables []table) []byte {
	slices.SortFunc(tables, func(a, b table) int { return cmp.Compare(a.tag, b.tag) })
	n := len(tables)
	power, log := halving(n)
	out := []byte{0, 1, 0, 0}
	for _, w := range []int{n, 16 * power, log, 16 * (n - power)} {
		out = binary.BigEndian.AppendUint16(out, uint16(w))
	}
	at, headAt := 12+16*n, 0
	for _, t := range tables {
		if t.tag == "head" {
			headAt = at
		}
		out = append(out, t.tag...)
		for _, v := range []int{int(checksum(t.data)), at, len(t.data)} {
			out = binary.BigEndian.AppendUint32(out, uint32(v))
		}
		at += (len(t.data) + 3) &^ 3
	}
	for _, t := range tables {
		out = append(out, t.data...)
		for len(out)%4 != 0 {
			out = append(out, 0)
		}
	}
	const whole = 0xB1B0AFBA // what the sums of a sound file come to
	binary.BigEndian.PutUint32(out[headAt+8:], whole-checksum(out))
	return out
}

// checksum adds the words of a table, which may end within a word.
func checksum(b []byte) uint32 {
	var sum uint32
	for ; len(b) >= 4; b = b[4:] {
		sum += binary.BigEndian.Uint32(b)
	}
	for i, c := range b {
		sum += uint32(c) << (24 - 8*i)
	}
	return sum
}
