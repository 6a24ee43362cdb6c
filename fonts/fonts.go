// Package fonts holds the lettering of the drawings, Go Regular and Go Bold,
// and reads from the font files what a drawing has to know: how wide a
// character runs, how high it stands, and whether it is there at all.
//
// The two faces have no kerning and no ligatures, so the width of a text is
// the sum of the widths of its characters, in every viewer and every writer.
// That is why no shaping engine is needed here.
//
// Left out: any other font, right-to-left scripts, combining marks.
//
// The fonts are under the licence in the file LICENSE of this folder.
package fonts

import (
	_ "embed" // for the font files
	"encoding/binary"
	"errors"
	"sync"
)

//go:embed Go-Regular.ttf
var regularTTF []byte

//go:embed Go-Bold.ttf
var boldTTF []byte

// Regular is the face for everything but titles.
var Regular = sync.OnceValue(func() *Face { return mustParse("Go Regular", regularTTF) })

// Bold is the face for titles.
var Bold = sync.OnceValue(func() *Face { return mustParse("Go Bold", boldTTF) })

// Face is one font, read. Its lengths are in font units, of which there are
// UnitsPerEm to the em. A Face is not changed after it is made.
type Face struct {
	Name       string
	UnitsPerEm int
	CapHeight  int // of H
	TTF        []byte

	tables map[string][]byte
	glyphs map[rune]Glyph
	ascii  [128]Glyph // the same, for the characters that nearly every text is made of
}

// Glyph is what a drawing has to know of one character.
type Glyph struct {
	ID         uint16
	Advance    int // to the next character
	YMin, YMax int // ink below and above the baseline; both 0 for a space
}

// Glyph returns the glyph of a character; false if the font has none.
func (f *Face) Glyph(r rune) (Glyph, bool) {
	if r >= 0 && int(r) < len(f.ascii) {
		return f.ascii[r], f.ascii[r].ID != 0
	}
	g, ok := f.glyphs[r]
	return g, ok
}

// Run is how far the characters run one after the other, in font units. One that
// the font lacks counts nothing.
func (f *Face) Run(s string) int {
	units := 0
	for _, r := range s {
		if r >= 0 && int(r) < len(f.ascii) {
			units += f.ascii[r].Advance
			continue
		}
		units += f.glyphs[r].Advance
	}
	return units
}

// mustParse panics only when an embedded file is damaged, which the tests of
// this package would show; no user input comes here.
func mustParse(name string, ttf []byte) *Face {
	f, err := parse(name, ttf)
	if err != nil {
		panic("fonts: " + name + ": " + err.Error())
	}
	return f
}

var (
	errTables = errors.New("not a TrueType file with all its tables")
	errCmap   = errors.New("no Unicode character map of format 4")
)

// required are the tables that this package reads.
var required = [...]string{"head", "hhea", "hmtx", "maxp", "cmap", "loca", "glyf", "OS/2", "post", "name"}

func parse(name string, ttf []byte) (*Face, error) {
	f := &Face{Name: name, TTF: ttf, tables: map[string][]byte{}}
	if len(ttf) < 12 {
		return nil, errTables
	}
	for i := range int(u16(ttf, 4)) {
		rec := ttf[12+16*i:]
		at, size := u32(rec, 8), u32(rec, 12)
		if int(at+size) > len(ttf) {
			return nil, errTables
		}
		f.tables[string(rec[:4])] = ttf[at : at+size]
	}
	for _, tag := range required {
		if f.tables[tag] == nil {
			return nil, errTables
		}
	}
	f.UnitsPerEm = int(u16(f.tables["head"], 18))
	f.CapHeight = int(u16(f.tables["OS/2"], 88))
	return f, f.readCmap()
}

// readCmap fills f.glyphs from the format 4 subtable, which covers all that
// these fonts have.
func (f *Face) readCmap() error {
	sub := f.format4()
	if sub == nil {
		return errCmap
	}
	segX2 := int(u16(sub, 6))
	ends, starts := sub[14:], sub[16+segX2:]
	deltas, offsets := sub[16+2*segX2:], sub[16+3*segX2:]
	f.glyphs = make(map[rune]Glyph, 1024)
	for i := 0; i < segX2; i += 2 {
		first, last := int(u16(starts, i)), int(u16(ends, i))
		delta, offset := u16(deltas, i), int(u16(offsets, i))
		for c := first; c <= last && c < 0xFFFF; c++ {
			id := uint16(c) + delta
			if offset != 0 {
				if id = u16(offsets, i+offset+2*(c-first)); id != 0 {
					id += delta
				}
			}
			if id != 0 {
				g := f.glyph(id)
				f.glyphs[rune(c)] = g
				if c < len(f.ascii) {
					f.ascii[c] = g
				}
			}
		}
	}
	return nil
}

// format4 finds the subtable for the Basic Multilingual Plane.
func (f *Face) format4() []byte {
	cmap := f.tables["cmap"]
	for i := range int(u16(cmap, 2)) {
		rec := cmap[4+8*i:]
		sub := cmap[u32(rec, 4):]
		unicode := u16(rec, 0) == 0 || u16(rec, 0) == 3 && u16(rec, 2) == 1
		if unicode && u16(sub, 0) == 4 {
			return sub
		}
	}
	return nil
}

func (f *Face) glyph(id uint16) Glyph {
	g := Glyph{ID: id, Advance: int(u16(f.metric(id), 0))}
	if outline := f.outline(id); len(outline) >= 10 {
		g.YMin, g.YMax = int(i16(outline, 4)), int(i16(outline, 8))
	}
	return g
}

// metric returns the advance and the left side bearing, 4 bytes. Glyphs after
// the last full metric share its advance; both faces here have one for each.
func (f *Face) metric(id uint16) []byte {
	full := u16(f.tables["hhea"], 34)
	id = min(id, full-1)
	return f.tables["hmtx"][4*int(id):][:4]
}

// outline returns the glyf entry; empty for a character without ink.
func (f *Face) outline(id uint16) []byte {
	loca, glyf := f.tables["loca"], f.tables["glyf"]
	if i16(f.tables["head"], 50) == 0 {
		return glyf[2*int(u16(loca, 2*int(id))) : 2*int(u16(loca, 2*int(id)+2))]
	}
	return glyf[u32(loca, 4*int(id)):u32(loca, 4*int(id)+4)]
}

func u16(b []byte, at int) uint16 { return binary.BigEndian.Uint16(b[at:]) }
func i16(b []byte, at int) int16  { return int16(u16(b, at)) }
func u32(b []byte, at int) uint32 { return binary.BigEndian.Uint32(b[at:]) }
