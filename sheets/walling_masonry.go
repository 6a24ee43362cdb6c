package sheets

import "fmt"

// masonryWalling is solid or filled brick or block, with anchors.
func masonryWalling() walling {
	return walling{
		face: "wall",
		find: func(*maker) string {
			return "See what the wall is made of: solid or filled, how thick, how sound. Mark cracks, damp, loose bricks and the joints along the plate."
		},
		marked: func(m *maker) string {
			return m.offJoints("a joint, a crack or a loose brick", "the middle of a sound one")
		},
		drive: func(m *maker) string {
			return fmt.Sprintf("Drill through the plate into the wall at each, brush and blow the hole clean, and set an anchor Ø%s as its maker states. %s",
				m.saidFine(m.job.Plate.Fixing.Screw), m.edgeWords(m.job.Plate.Fixing))
		},
		prove:   "Try the first anchor as its maker or the designer states, and prove the plate level and straight, before the others are drawn tight.",
		care:    "No nails, no plugs, nothing into a joint. The dust of masonry harms the lungs: draw it off or drill wet, and wear a mask.",
		plan:    "Anchors go into sound masonry: move each one off joints and cracks, still clear of the rafters and no farther apart than stated.",
		look:    "how sound it is and where its joints run",
		hold:    "Hold the anchor holes until the joints of the wall are marked: measure from the left end. Bore clear of joints and cracks",
		caution: "Fix the plate with the anchors stated into sound masonry, never with nails or plugs and never into joints. Kind, depth and distances of anchors are for a licensed person to state. Have one tried on the wall itself.",
		into: func(m *maker) string {
			return "Into sound masonry, not into a joint. " + m.edgeWords(m.job.Plate.Fixing) + " Find cables and pipes before drilling."
		},
		post: "Into sound masonry, not into a joint; find cables and pipes before drilling",
		clad: "Render as found: to the masonry behind it",
		asks: []string{
			"Is the wall solid or filled with grout, and who has looked?",
			"Which anchors, how deep in the wall, how far from its edges and from one another, and who states it?",
		},
	}
}

// concreteWalling is cast concrete, with anchors.
func concreteWalling() walling {
	w := masonryWalling()
	w.find = func(*maker) string {
		return "See how thick and how sound the concrete is. Find the bars in it and mark them along the plate, with cracks and cast-in pipes."
	}
	w.marked = func(m *maker) string { return m.offJoints("a bar or a crack", "sound concrete beside it") }
	w.care = "No nails, no plugs, and no bar cut. The dust of concrete harms the lungs: draw it off or drill wet, and wear a mask."
	w.plan = "Anchors go into sound concrete: move each one off bars and cracks, still clear of the rafters and no farther apart than stated."
	w.look = "where bars lie in it"
	w.hold = "Hold the anchor holes until the bars in the wall are found: measure from the left end. Bore clear of bars and cracks"
	w.caution = "Fix the plate with the anchors stated into sound concrete, never with nails or plugs. Kind, depth and distances of anchors are for a licensed person to state. Find the bars first and cut none."
	w.into = func(m *maker) string {
		return "Into sound concrete, clear of its bars. " + m.edgeWords(m.job.Plate.Fixing) + " Find bars, cables and pipes before drilling."
	}
	w.post = "Into sound concrete, clear of its bars; find cables and pipes before drilling"
	w.clad = "Render as found: to the concrete behind it"
	w.asks = []string{"Which anchors, how deep in the concrete, how far from its edges and from one another, and who states it?"}
	return w
}

// unfilledWalling is masonry with hollow cores.
func unfilledWalling() walling {
	w := masonryWalling()
	w.find = func(*maker) string {
		return "Drill a trial hole where the designer asks for one: see how thick the shells are and where the cores run. Mark cores, joints and cracks along the plate."
	}
	w.marked = func(m *maker) string { return m.offJoints("a joint or a crack", "the place that the designer states") }
	w.prove = "Nothing is drilled before the designer has confirmed the anchors. Then try the first, and prove the plate level and straight, before the others are drawn tight."
	w.caution = "Unfilled masonry holds no usual anchor. Designer to confirm: which anchors and sleeves, or which cores are filled first. Never nails or plugs, never into joints."
	w.into = func(m *maker) string {
		return "Unfilled masonry, designer to confirm: anchors with sleeves, or cores filled first. " + m.edgeWords(m.job.Plate.Fixing) + " Find cables and pipes before drilling."
	}
	w.post = "Unfilled masonry, designer to confirm: anchors with sleeves, or cores filled first"
	w.plan = "Unfilled masonry: designer to confirm anchors and places before any hole is drilled."
	w.asks = []string{
		"Designer to confirm: which anchors and sleeves hold in unfilled masonry, or which cores are filled and tied first?",
		"How far from edges, joints and one another, and who states it?",
	}
	return w
}

// offJoints says how anchors are moved off what does not hold.
func (m *maker) offJoints(off, to string) string {
	anchor := "the anchor"
	if m.job.Plate.Packer.Thickness > 0 {
		anchor = "the anchor and its packer"
	}
	return fmt.Sprintf("Where a mark falls on %s, move %s along to %s, clear of the rafters and no farther from its neighbours than drawn.", off, anchor, to)
}
