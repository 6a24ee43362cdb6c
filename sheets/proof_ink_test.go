package sheets_test

import (
	"encoding/binary"
	"flag"
	"fmt"
	"hash/fnv"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"plumbcut/draw"
	"plumbcut/geom"
)

var update = flag.Bool("update", false, "write the digests of the examples' ink anew")

// inkStep is how finely the digest knows where ink is, mm on paper: finer than
// any pen, coarser than rounding.
const inkStep = 0.01

// zones are the fields of a sheet's grid, row by row from the top, and in each
// a number that changes with any mark in it: so a change is told by sheet and
// field, as one reader of a drawing tells another.
type zones struct {
	paper      draw.Paper
	cols, rows int
	ink        []uint32
}

func newZones(p draw.Paper) *zones {
	z := &zones{paper: p, cols: draw.GridFields(p.Width), rows: draw.GridFields(p.Height)}
	z.ink = make([]uint32, z.cols*z.rows)
	return z
}

// at is the index of the field that holds a point; ink outside the frame is
// that of the field nearest to it.
func (z *zones) at(p geom.Pt) int {
	field := func(v, edge float64, n int) int {
		const side = 50.0 // ISO 5457: of a field, counted from the middle
		return max(0, min(n-1, int(math.Floor((v-edge/2)/side))+n/2))
	}
	return (z.rows-1-field(p.Y, z.paper.Height, z.rows))*z.cols + field(p.X, z.paper.Width, z.cols)
}

// mark counts a mark in the fields of the given points, each once.
func (z *zones) mark(sum uint32, points ...geom.Pt) {
	seen := map[int]bool{}
	for _, p := range points {
		if i := z.at(p); !seen[i] {
			seen[i] = true
			z.ink[i] += sum // in any order
		}
	}
}

// sumOf is a number that stands for what it is given.
func sumOf(what ...any) uint32 {
	h := fnv.New32a()
	for _, x := range what {
		switch x := x.(type) {
		case geom.Pt:
			for _, v := range []float64{x.X, x.Y} {
				binary.Write(h, binary.LittleEndian, int64(math.Round(v/inkStep)))
			}
		case float64:
			binary.Write(h, binary.LittleEndian, int64(math.Round(x/inkStep)))
		default:
			fmt.Fprint(h, x, "|")
		}
	}
	return h.Sum32()
}

// inkOf is the ink of a sheet by its fields.
func inkOf(s *draw.Sheet) *zones {
	z := newZones(s.Paper)
	for _, item := range s.Items {
		if t := item.Text; t != nil {
			z.mark(sumOf(t.Layer, t.At, t.Align, t.Height, t.Turn, t.Bold, t.String), t.At)
			continue
		}
		p := item.Path
		fill := -1.0
		if p.Fill != nil {
			fill = float64(*p.Fill)
		}
		for _, line := range p.Flatten() {
			for i := 1; i < len(line); i++ {
				a, b := line[i-1], line[i]
				z.mark(sumOf(p.Style, p.Stroke, fill, a, b), a, a.Lerp(b, 0.5), b)
			}
		}
	}
	return z
}

// digest is the ink of a set as text.
func digest(set *draw.Set) string {
	var b strings.Builder
	for _, s := range set.Sheets {
		fmt.Fprintf(&b, "%s %s\n", s.Number, s.Title)
		z := inkOf(s)
		for row := range z.rows {
			fmt.Fprintf(&b, " %c", rowLetter(row))
			for _, v := range z.ink[row*z.cols : (row+1)*z.cols] {
				if v == 0 {
					b.WriteString(" ----")
				} else {
					fmt.Fprintf(&b, " %04x", v>>16^v&0xffff)
				}
			}
			b.WriteByte('\n')
		}
	}
	return b.String()
}

// rowLetter names a row of fields; ISO 5457 leaves out I and O.
func rowLetter(row int) byte { return "ABCDEFGHJKLMNPQRSTUVWXYZ"[row] }

// sheetDigests splits a digest into its sheets.
func sheetDigests(text string) (names []string, rows map[string][]string) {
	rows = map[string][]string{}
	for line := range strings.Lines(text) {
		line = strings.TrimRight(line, "\n")
		if !strings.HasPrefix(line, " ") {
			names = append(names, line)
			continue
		}
		last := names[len(names)-1]
		rows[last] = append(rows[last], line)
	}
	return names, rows
}

// moved tells where two digests differ, a line for each sheet.
func moved(old, fresh string) (told []string) {
	was, wasRows := sheetDigests(old)
	is, isRows := sheetDigests(fresh)
	for _, name := range was {
		if isRows[name] == nil {
			told = append(told, name+": gone")
		}
	}
	for _, name := range is {
		if wasRows[name] == nil {
			told = append(told, name+": new")
			continue
		}
		var fields []string
		for i, row := range isRows[name] {
			now := strings.Fields(row)
			var then []string
			if i < len(wasRows[name]) {
				then = strings.Fields(wasRows[name][i])
			}
			for k := 1; k < len(now); k++ {
				if k >= len(then) || now[k] != then[k] {
					fields = append(fields, fmt.Sprint(now[0], k))
				}
			}
		}
		if len(fields) > 0 {
			told = append(told, fmt.Sprintf("%s: ink moved in %s", name, strings.Join(fields, " ")))
		}
	}
	return told
}

// TestInkIsWhereItWas holds the sheets of the examples to the digests that were
// reviewed with them, and tells of a change on which sheet and where it is.
func TestInkIsWhereItWas(t *testing.T) {
	each(t, examples(t), func(d *drawn) {
		kept := filepath.Join("testdata", "ink", strings.TrimSuffix(d.name, ".yaml")+"_golden.txt")
		fresh := digest(d.set)
		if *update {
			if err := os.WriteFile(kept, []byte(fresh), 0o666); err != nil {
				t.Error(err)
			}
			return
		}
		old, err := os.ReadFile(kept)
		if err != nil {
			t.Errorf("%s: %v; look at its sheets, then write it with -update", d.name, err)
			return
		}
		for _, line := range moved(string(old), fresh) {
			t.Errorf("%s, sheet %s; look at it, then renew the digest with -update", d.name, line)
		}
	})
}

// TestInkIsTold moves one line of a sheet by a hundredth of a millimetre and
// one word by a letter, and expects the fields that hold them to be told.
func TestInkIsTold(t *testing.T) {
	paper, _ := draw.PaperByName("A3")
	sheet := func(x float64, word string) *draw.Set {
		s := &draw.Sheet{Number: "A01", Title: "Plan", Paper: paper}
		s.Line(draw.Style{Layer: draw.Outline, Pen: draw.Wide}, geom.P(x, 20), geom.P(x, 30))
		s.AddText(draw.Text{Layer: draw.Notes, At: geom.P(230, 160), Height: 3.5, String: word})
		return &draw.Set{Sheets: []*draw.Sheet{s}}
	}
	old := digest(sheet(20, "beam"))
	for _, c := range []struct {
		set  *draw.Set
		want string
	}{
		{sheet(20, "beam"), ""},
		{sheet(20.01, "beam"), "A01 Plan: ink moved in F1"},
		{sheet(20, "bean"), "A01 Plan: ink moved in C5"},
		{sheet(75, "beam"), "A01 Plan: ink moved in F1 F2"},
	} {
		if got := strings.Join(moved(old, digest(c.set)), "\n"); got != c.want {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
}
