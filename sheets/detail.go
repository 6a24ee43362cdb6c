package sheets

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// detail is one joint that is drawn at a larger scale. It stands for all that
// are made the same way.
type detail struct {
	number int
	title  string
	kind   frame.JointKind
	joint  frame.Joint   // the one that is drawn
	alike  []frame.Joint // all that it stands for, in the order of the frame
	at     geom.Vec      // where marks on other sheets point
	radius float64       // of the ring round it there, mm of the model
	on     []string      // topics of the views that carry its mark: "plan", "section A", "elevations"
	spec   detailSpec
}

// detailSpec is how the joints of one kind are drawn. Each kind is one file,
// detail_*.go, and one line in detailSpecs.
type detailSpec struct {
	kind  frame.JointKind
	title string                               // empty: the kind's name
	when  func(m *maker) bool                  // nil: always
	scale float64                              // to draw it at
	least float64                              // where a smaller one saves a sheet; 0: the same
	same  func(m *maker, j frame.Joint) string // joints with the same answer are made alike; nil: all are
	plain func(m *maker, j frame.Joint) bool   // which joints show best how they are made; nil: all
	ring  float64                              // radius of the mark's ring, mm of the model
	on    []string                             // who marks the joint nearest to the section
	other []string                             // who marks those of the kind that are made differently
	views func(m *maker, d detail) []*viewBlock
}

// The views that carry the marks of details.
const (
	onPlan       = "plan"
	onSection    = "section A"
	onElevations = "elevations"
)

// detailSpecs lists the kinds of detail in the order of their numbers: from
// the house outwards and from the top down. The detail of rafters on a carrier is
// that of the way in which it holds them.
func (m *maker) detailSpecs() []detailSpec {
	held := func(k frame.Carrier) detailSpec {
		s := ofCarrier(k).detail
		s.kind = frame.RafterJoint(k)
		return s
	}
	return []detailSpec{
		battenRafterDetail(),
		slatCleatDetail(),
		blockDetail(),
		held(m.rear()),
		plateWallDetail(m),
		held(m.front()),
		fasciaDetail(),
		beamPostDetail(),
		beamCheckedDetail(),
		beamFaceDetail(),
		beamBracketDetail(),
		beamTwinDetail(),
		beamTwinCheckedDetail(),
		braceDetail(),
		valanceFaceDetail(),
		valanceBetweenDetail(),
		postWallDetail(),
		postConcreteDetail(),
		postStirrupDetail(),
		postSlabDetail(),
		postDeckDetail(),
	}
}

// findDetails lists the distinct joints of the frame, numbered from 1. Each is
// shown by the one nearest beyond the plane of the cross-section, so that the
// mark on the section points at the very joint.
func (m *maker) findDetails() []detail {
	var out []detail
	x := m.sectionX()
	for _, spec := range m.detailSpecs() {
		if spec.when != nil && !spec.when(m) {
			continue
		}
		variants := m.variants(spec)
		rank := func(d detail) float64 { return m.rank(spec, d.joint, x) }
		slices.SortStableFunc(variants, func(a, b detail) int { return cmp.Compare(rank(a), rank(b)) })
		for i, d := range variants {
			d.number = len(out) + 1
			d.on = spec.on
			if i > 0 {
				d.on = spec.other
			}
			d.at = d.joint.At
			d.radius = spec.ring
			d.title = cmp.Or(spec.title, upperFirst(string(spec.kind)))
			out = append(out, d)
		}
	}
	return out
}

// variants groups the joints of a kind by how they are made, and picks the one
// to draw of each.
func (m *maker) variants(spec detailSpec) []detail {
	var out []detail
	x := m.sectionX()
	where := map[string]int{}
	for _, j := range m.frame.Joints {
		if j.Kind != spec.kind {
			continue
		}
		key := ""
		if spec.same != nil {
			key = spec.same(m, j)
		}
		i, ok := where[key]
		if !ok {
			i = len(out)
			where[key] = i
			out = append(out, detail{kind: spec.kind, spec: spec, joint: j})
		}
		out[i].alike = append(out[i].alike, j)
		if m.rank(spec, j, x) < m.rank(spec, out[i].joint, x) {
			out[i].joint = j
		}
	}
	return out
}

// rank orders joints by their distance from the section plane at x. Those on
// the viewer's side of it, which the section does not show, come after all
// that it does, and those that do not show well last.
func (m *maker) rank(spec detailSpec, j frame.Joint, x float64) float64 {
	const unseen = 1e6 // mm, longer than any frame
	d := j.At.X - x
	if d < 0 {
		d = unseen - d
	}
	if spec.plain != nil && !spec.plain(m, j) {
		d += 2 * unseen
	}
	return d
}

// sizeKey tells sizes apart that differ by more than rounding, for
// detailSpec.same.
func sizeKey(mm ...float64) string {
	const finest = 0.01 // mm; no timber is cut finer
	key := ""
	for _, v := range mm {
		key += fmt.Sprintf("%.0f ", math.Round(v/finest))
	}
	return key
}
