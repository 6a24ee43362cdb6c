package sheets

import "fmt"

// fasciaWalling is the board at the eaves, below the gutter.
func fasciaWalling() walling {
	return walling{
		face: "fascia",
		find: func(m *maker) string {
			return "Find the ends of the house's rafters behind the fascia and mark their centres on it. Look from inside: how deep and how sound they are, and how the board is held."
		},
		marked: func(m *maker) string { return m.onStuds("the fascia") },
		drive: func(m *maker) string {
			return fmt.Sprintf("Drive a screw Ø%s at each, through the board into the end of the house's rafter, as the designer confirms. Leave the gutter and its brackets free.", m.saidFine(m.job.Plate.Fixing.Screw))
		},
		prove:   "Nothing is drilled before the designer has confirmed the fascia. Prove each rafter's end with a pilot hole, and the plate level and straight, before any screw is drawn tight.",
		care:    "Into confirmed rafter ends only, never into the fascia alone: no nails. Keep off the gutter, and work from a platform.",
		plan:    "Prove every rafter end behind the fascia by drilling a pilot hole before the plate goes up.",
		look:    "where the ends of the house's rafters are behind the fascia",
		hold:    "Hold the screw holes until the ends of the house's rafters are found: measure their centres from the left end. Bore on one",
		caution: "A fascia is there to close the eaves. Designer to confirm what it, the ends of the house's rafters and the roof over them can carry, and the fixings. Never nails, never into the board alone. Some authorities ask for an engineer's details.",
		into: func(m *maker) string {
			into := "Into confirmed ends of the house's rafters, never into the fascia alone. Designer to confirm."
			if m.needsStuds() {
				into += " Where the plan says blocking, fix it between them first."
			}
			return into
		},
		post:   "To be stated",
		titled: "Wall plate on fascia",
		clad:   "Fascia as found: thickness, soundness and how it is held for the designer to confirm",
		beyond: func(f plateFixed) (below, above float64) {
			const most = 300 // mm: the gutter, but no roof
			b := f.job.Wall.Fascia
			return 0, min(most, max(0, b.Underside+b.Depth-f.high, b.Gutter.Underside+b.Gutter.Height-f.high))
		},
		asks: []string{
			"Designer to confirm: do the fascia, the ends of the house's rafters and the roof over them carry the plate?",
			"Who takes the gutter down and puts it back, if it is in the way?",
		},
	}
}
