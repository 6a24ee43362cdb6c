package draw

import (
	"cmp"
	"slices"
)

// String is the name of the layer as a viewer lists it.
func (l Layer) String() string {
	names := [layerCount]string{
		Hatch: "hatch", Context: "context", Outline: "outline", Hidden: "hidden",
		Centre: "centre", Dimension: "dimensions", Notes: "notes", Border: "border",
	}
	if l < 0 || l >= layerCount {
		return "no layer"
	}
	return names[l]
}

// Layers lists all layers in the order of painting.
func Layers() []Layer {
	all := make([]Layer, layerCount)
	for i := range all {
		all[i] = Layer(i)
	}
	return all
}

// Group is a run of marks that a writer can paint without touching its pen:
// paths of one style, or fills, or texts of one face and height.
type Group struct {
	Layer Layer
	Fills bool // Paths are filled, and some may be stroked too
	Paths []*Path
	Texts []*Text
}

// The classes of marks in the order in which a run of them is painted.
const (
	paleFill  = iota // covers what lies under it, so nothing may pass it
	blackFill        // arrowheads and dots
	stroke           // one class for each style
	lettering = stroke + 100
)

// slot is the place of a mark in the order of painting.
type slot struct {
	layer  Layer
	run    int // marks between two pale fills
	class  int
	height float64
}

// compare puts a before b if it is painted in an earlier group.
func (a slot) compare(b slot) int {
	return cmp.Or(cmp.Compare(a.layer, b.layer), cmp.Compare(a.run, b.run),
		cmp.Compare(a.class, b.class), cmp.Compare(a.height, b.height))
}

// Groups puts the marks of the sheet in the order of painting: layer by layer,
// and within a layer as they were drawn, except that black marks, which may be
// painted in any order, are gathered by pen. The sheet must pass Check.
func (s *Sheet) Groups() []Group {
	slots := make([]slot, len(s.Items))
	order := make([]int32, len(s.Items)) // sorted in place of the slots, which are larger
	var runs [layerCount]int
	var open [layerCount]bool // the run has a mark that a pale fill would cover
	for i, item := range s.Items {
		at := place(item)
		pale := at.class == paleFill
		if pale && open[at.layer] {
			runs[at.layer]++
		}
		open[at.layer] = !pale
		at.run = runs[at.layer]
		slots[i], order[i] = at, int32(i)
	}
	slices.SortFunc(order, func(i, j int32) int {
		return cmp.Or(slots[i].compare(slots[j]), cmp.Compare(i, j))
	})

	var groups []Group
	for i, k := range order {
		at := slots[k]
		if i == 0 || at.compare(slots[order[i-1]]) != 0 {
			groups = append(groups, Group{Layer: at.layer, Fills: at.class < stroke})
		}
		g := &groups[len(groups)-1]
		if item := s.Items[k]; item.Path != nil {
			g.Paths = append(g.Paths, item.Path)
		} else {
			g.Texts = append(g.Texts, item.Text)
		}
	}
	return groups
}

func place(item Item) slot {
	if t := item.Text; t != nil {
		at := slot{layer: t.Layer, class: lettering, height: t.Height}
		if t.Bold {
			at.class++
		}
		return at
	}
	p := item.Path
	at := slot{layer: p.Style.Layer}
	switch {
	case p.Fill == nil:
		at.class = stroke + int(p.Style.Pen)*int(dashCount) + int(p.Style.Dash)
	case *p.Fill == 1 && !p.Stroke:
		at.class = blackFill
	}
	return at
}
