// Package template draws full-size paper templates: a page is printed, checked
// with a ruler, folded over the timber's edges, taped down and cut along.
//
// A template shows the faces of a timber unrolled side by side, each as seen
// from outside the timber, so that the printed side stays in sight when the
// paper lies on it:
//
//	       ┌────────┐
//	       │  top   │       the fold lies on the arris
//	├ ─ ─ ─┼ ─fold ─┼
//	│ left │ outer  │       what lies above the fold on paper lies behind the
//	       │  side  │       arris on the timber: third-angle, and no face is
//	       └────────┘       ever mirrored
//
// The way of a template:
//
//	member ── works (cuts that lie together) ── flaps (faces, unrolled)
//	                                              │
//	      cut lines, read off the member's solid ─┤
//	                      words, set where there is room
//	                                              │
//	                 pages: packed, or tiled where they fit no page
//
// Cut lines are the edges that the member's solid has on the faces of its
// uncut prism, whatever made them. So a new kind of cut needs no code here to
// be drawn right; only words of its own.
//
// A template is local: it carries the shape of one cut, and the tape carries
// its place along the timber, since paper stretches. Alike cuts share one.
//
// Left out: cuts within the timber that reach no face of the prism, holes that
// are not square to a face, and the round footings, which are not timber.
package template
