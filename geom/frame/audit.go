package frame

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"plumbcut/geom"
)

// Finding is something that an audit of the model found wrong. A sound frame
// has none; one is a fault of this program, not of the job.
type Finding struct {
	Rule string // AuditClash or AuditBearing
	A, B int    // indices of Frame.Members
	What string
}

// The audits.
const (
	AuditClash   = "clash"
	AuditBearing = "bearing"
)

const (
	// clashLeast is the volume from which two members clash, in cubic
	// millimetres: a grain of sand, far above what rounding leaves.
	clashLeast = 0.5

	// bearingTol is the share by which a bearing may differ from its stated
	// area: the wobble of rounding where faces are cut into pieces.
	bearingTol = 1e-4
)

// Audit checks that no two members share any room and that every bearing face
// of every joint is met over its whole area.
func (f *Frame) Audit() []Finding {
	out := f.auditClashes()
	for _, j := range f.Joints {
		if !j.Bears() {
			continue
		}
		got := geom.ContactOn(f.Members[j.A].solid, f.Members[j.B].solid, j.Bearing)
		if math.Abs(got-j.Area) > bearingTol*j.Area || !(j.Area > 0) {
			out = append(out, Finding{AuditBearing, j.A, j.B, fmt.Sprintf("%s: %s bears on %s over %.3f mm², want %.3f",
				j.Kind, f.name(j.A), f.name(j.B), got, j.Area)})
		}
	}
	return out
}

func (f *Frame) name(i int) string { return fmt.Sprintf("%s %d", f.Members[i].Kind, f.Members[i].No) }

// auditClashes sweeps along the wall, so that only members that come near
// each other are compared.
func (f *Frame) auditClashes() []Finding {
	order := make([]int, len(f.Members))
	box := make([]geom.Box3, len(f.Members))
	for i := range order {
		order[i], box[i] = i, f.Members[i].solid.Bounds()
	}
	slices.SortStableFunc(order, func(a, b int) int {
		return cmp.Compare(box[a].Min.X, box[b].Min.X)
	})
	var out []Finding
	var open []int // members that reach to the sweep's place
	for _, i := range order {
		kept := open[:0]
		for _, k := range open {
			if box[k].Max.X <= box[i].Min.X {
				continue
			}
			kept = append(kept, k)
			if v := geom.Overlap(f.Members[i].solid, f.Members[k].solid); v > clashLeast {
				a, b := min(i, k), max(i, k)
				out = append(out, Finding{AuditClash, a, b, fmt.Sprintf("%s and %s share %.3f mm³", f.name(a), f.name(b), v)})
			}
		}
		open = append(kept, i)
	}
	return out
}
