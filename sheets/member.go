package sheets

import (
	"fmt"
	"strconv"
	"strings"

	"plumbcut/geom"
	"plumbcut/geom/frame"
	"plumbcut/geom/measure"
)

const memberTitle = "Member drawings"

// memberTopic names the topic of a mark that leads to a member's drawing.
func memberTopic(mark string) string { return "member " + mark }

// timber is a member of its own drawing, in its own axes, with all that are
// alike.
type timber struct {
	*maker
	frame.Member                // as drawn; its Place is the world
	index        int            // of the one drawn, in Frame.Members
	solid        geom.Solid     // in the member's own axes
	where        geom.Axes      // where the one drawn stands
	alike        []frame.Member // those as drawn, in order
	other        []frame.Member // its mirror images, in order
	straps       []frame.Spot   // on the one drawn
	fine         measure.Format // to half a division of the tape
}

// timbers are the distinct timbers of the frame, in the order of its members.
func (m *maker) timbers() []*timber {
	byMark := map[string]*timber{}
	var out []*timber
	for i, b := range m.frame.Members {
		if b.Kind == frame.KindFooting {
			continue
		}
		s := byMark[b.Mark]
		if s == nil {
			s = m.newStick(i)
			byMark[b.Mark] = s
			out = append(out, s)
		}
		if b.Hand == s.Hand {
			s.alike = append(s.alike, b)
		} else {
			s.other = append(s.other, b)
		}
	}
	return out
}

func (m *maker) newStick(i int) *timber {
	b := m.frame.Members[i]
	s := &timber{maker: m, Member: b, index: i, where: b.Place, solid: b.Solid().Placed(home(b.Place)), fine: m.tapeFigures()}
	s.Place = geom.World()
	s.straps = s.strapsOn()
	return s
}

// home are the axes that carry a member from its place back to its own axes.
func home(a geom.Axes) geom.Axes {
	return geom.Axes{
		O: a.Local(geom.Vec{}), U: a.LocalDir(geom.V(1, 0, 0)),
		V: a.LocalDir(geom.V(0, 1, 0)), W: a.LocalDir(geom.V(0, 0, 1)),
	}
}

// tapeFigures writes figures that are marked with a tape or a square, to half a
// division: a pencil mark can stand between two lines.
func (m *maker) tapeFigures() measure.Format {
	f := m.figures
	const half, fraction = 0.5, 32
	f.Step, f.Fraction = half, fraction
	return f
}

// scene is the member by itself.
func (s *timber) scene() *scene {
	return &scene{frame: &frame.Frame{Members: []frame.Member{s.Member}}, solids: []geom.Solid{s.solid}}
}

// memberSheets draws every distinct timber, several to a sheet.
func (m *maker) memberSheets() []draft {
	sp := m.room(memberTitle)
	b := binder{hand: m.hand, space: sp}
	var out []draft
	topics := map[int][]string{}
	for _, s := range m.timbers() {
		sheet := s.place(&b)
		topics[sheet] = append(topics[sheet], memberTopic(s.Mark))
	}
	for i, sheet := range b.sheets {
		if i == 0 {
			topics[i] = append(topics[i], "members")
		}
		out = append(out, draft{memberTitle, topics[i], sheet.cards})
	}
	return out
}

// numbers lists places in a kind, "1 to 9" or "2, 4 and 5".
func numbers(ms []frame.Member) string {
	var parts []string
	for i := 0; i < len(ms); {
		j := i
		for j+1 < len(ms) && ms[j+1].No == ms[j].No+1 {
			j++
		}
		switch j - i {
		case 0:
			parts = append(parts, strconv.Itoa(ms[i].No))
		case 1:
			parts = append(parts, strconv.Itoa(ms[i].No), strconv.Itoa(ms[j].No))
		default:
			parts = append(parts, fmt.Sprintf("%d to %d", ms[i].No, ms[j].No))
		}
		i = j + 1
	}
	if n := len(parts); n > 1 {
		return strings.Join(parts[:n-1], ", ") + " and " + parts[n-1]
	}
	return strings.Join(parts, "")
}

// opposite reports whether the member must be made both ways.
func (s *timber) opposite() bool { return len(s.other) > 0 }
