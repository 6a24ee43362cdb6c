package frame_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// These tests hold the compound cut, EndCut, and its saw settings against
// carpenters' tables and published formulas. The cuts are taken from the planes
// of roofs and corners, not from the formulas that are tested.

// cutBy is the end cut that a plane with the normal n makes on a member in the
// axes a.
func cutBy(n geom.Vec, a geom.Axes) frame.EndCut {
	l := a.LocalDir(n)
	return frame.EndCut{End: frame.FaceEnd, Plan: math.Atan(-l.Y / l.X), Slope: math.Atan(l.Z / l.X)}
}

// along are the axes of a timber that runs along u with its sides plumb.
func along(u geom.Vec) geom.Axes {
	u = u.Unit()
	v := geom.V(0, 0, 1).Cross(u).Unit()
	return geom.Axes{U: u, V: v, W: u.Cross(v)}
}

func deg(rad float64) float64 { return rad * 180 / math.Pi }

// TestJackRafterCuts lays a jack rafter of each slope of the framing square
// against a hip at 45° in plan. The side cut on its top edge is 12 on the tongue
// and the length of the common rafter for a foot of run on the blade (Hodgson, ABC of the
// Steel Square: bitlit.ru/page/en/fred-t-hodgson/abc-of-the-steel-square-and-its-uses/31);
// the saw, the timber on its side, is set to the plumb cut and tilted by 45°
// (jlconline.com, "Cutting jack rafters").
func TestJackRafterCuts(t *testing.T) {
	for i, blade := range framingSquare {
		rise := float64(i + 1)
		c := cutBy(geom.V(1, 1, 0), along(geom.V(12, 0, rise)))
		if got := 12 * math.Tan(math.Abs(c.Plan)); math.Abs(got-blade) > squareTol {
			t.Errorf("rise %g: side cut of 12 and %.3f, want 12 and %.2f", rise, got, blade)
		}
		mitre, tilt := c.Saw()
		if want := math.Atan(rise / 12); math.Abs(mitre-want) > 1e-12 || math.Abs(deg(tilt)-45) > 1e-9 {
			t.Errorf("rise %g: saw at %.3f°, blade at %.3f°; want the plumb cut of %.3f° and 45°", rise, deg(mitre), deg(tilt), deg(want))
		}
	}
	// As the square has it for a rise of 8: 12 and 10, to the nearest sixteenth
	// (US Navy, NAVEDTRA 14044: constructionmanuals.tpub.com/14044/css/Ridge-Layout-85.htm).
	c := cutBy(geom.V(1, 1, 0), along(geom.V(12, 0, 8)))
	if got := 12 / math.Tan(math.Abs(c.Plan)); math.Abs(got-10) > 1.0/32 {
		t.Errorf("rise 8: side cut of 12 and %.3f, want 12 and 10", got)
	}
}

// hipSquare is the length of a hip for each foot of run of the common rafter,
// inches, by the rise: the second line of the framing square. 8 and 12 are seen
// in print (NAVEDTRA 14044 and Griffith, Carpentry, appendix IV); the others are
// √(288 + r²), reckoned by hand.
var hipSquare = [...]float64{
	17.00, 17.09, 17.23, 17.44, 17.69, 18.00, 18.36, 18.76, 19.21,
	19.70, 20.22, 20.78, 21.38, 22.00, 22.65, 23.32, 24.02, 24.74,
}

// TestHipCuts finds the hip as the line in which two roofs of one slope meet. It
// is cut plumb at 17 and the rise, and its side cut against the ridge is 17 on
// the tongue and its own length on the blade (Hodgson, as above, who gives 19 3/4 for
// a rise of 10). 17 stands for 16.97.
func TestHipCuts(t *testing.T) {
	diagonal := 12 * math.Sqrt2
	for i, want := range hipSquare {
		rise := float64(i + 1)
		left := geom.V(-rise, 0, 12) // squares to the two roofs, up
		right := geom.V(0, -rise, 12)
		hip := left.Cross(right)
		hip = hip.Mul(12 / hip.X) // for a foot of run of either roof
		if got := hip.Len(); math.Abs(got-want) > squareTol {
			t.Errorf("rise %g: hip %.3f, want %.2f", rise, got, want)
		}
		c := cutBy(geom.V(1, 0, 0), along(hip)) // by the ridge's side
		mitre, tilt := c.Saw()
		if got := math.Tan(mitre) * diagonal; math.Abs(got-rise) > 1e-9 {
			t.Errorf("rise %g: plumb cut of 17 and %.4f", rise, got)
		}
		if got := math.Tan(math.Abs(c.Plan)) * diagonal; math.Abs(got-want) > squareTol {
			t.Errorf("rise %g: side cut of 17 and %.3f, want 17 and %.2f", rise, got, want)
		}
		if math.Abs(deg(tilt)-45) > 1e-9 {
			t.Errorf("rise %g: blade at %.3f°, want 45°", rise, deg(tilt))
		}
	}
}

// TestSprungBoard cuts a board that leans from the wall, lying flat on the saw,
// to a mitred corner. Published: mitre = arctan(sin spring ÷ tan(corner ÷ 2)),
// bevel = arcsin(cos spring × cos(corner ÷ 2)), 31.62° and 33.86° for a spring of
// 38° and a square corner (calculator pages for mouldings, such as
// danskebankmortgagecalculatorsweden.calculator.city/compound-miter-calculator);
// 89.36550° and 37.99830° for 52° and a corner of 1°, 86.19507° and 37.93868° for one of
// 6° (sbebuilders.com/cgi-bin/geometry/crown_table.cgi?Spring_Angle=52).
func TestSprungBoard(t *testing.T) {
	for _, c := range []struct{ spring, corner, mitre, bevel, near float64 }{
		{38, 90, 31.62, 33.86, 0.005},
		{52, 1, 89.36550, 37.99830, 5e-6},
		{52, 6, 86.19507, 37.93868, 5e-6},
	} {
		s, half := c.spring*math.Pi/180, c.corner/2*math.Pi/180
		// The board runs along the wall; its face leans out from the wall by s.
		a := geom.Axes{U: geom.V(1, 0, 0), W: geom.V(0, -math.Sin(s), math.Cos(s))}
		a.V = a.W.Cross(a.U)
		mitre, tilt := cutBy(geom.V(math.Sin(half), math.Cos(half), 0), a).Saw()
		if math.Abs(deg(mitre)-c.mitre) > c.near || math.Abs(deg(tilt)-c.bevel) > c.near {
			t.Errorf("spring %g°, corner %g°: mitre %.5f° and bevel %.5f°, want %g° and %g°", c.spring, c.corner, deg(mitre), deg(tilt), c.mitre, c.bevel)
		}
	}
}

// TestSawCutsThePlane turns a saw's blade by the settings of random cuts; it must
// stand in the plane of the cut.
func TestSawCutsThePlane(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 9))
	for range 200 {
		c := frame.EndCut{End: frame.FaceEnd, Plan: 2*r.Float64() - 1, Slope: 2*r.Float64() - 1}
		m := frame.Member{Section: frame.Section{Depth: 100, Width: 50}, Length: 1000}
		cut := c.Cutters(m)[0][0].N.Neg()
		mitre, tilt := c.Saw()
		// The side V=0 on the table. A blade square to the timber looks along U;
		// it is tilted about the line that it cuts across the table, and turned.
		blade := fmt.Sprintf("%.9f %.9f %.9f", math.Cos(tilt)*math.Cos(mitre), math.Sin(tilt), math.Cos(tilt)*math.Sin(mitre))
		n := cut.Unit()
		if want := fmt.Sprintf("%.9f %.9f %.9f", math.Abs(n.X), math.Abs(n.Y), math.Abs(n.Z)); blade != want {
			t.Errorf("%+v: the blade looks along %s, want %s", c, blade, want)
		}
	}
}
