package sheets

import "fmt"

// veneerWalling is a leaf of masonry before studs.
func veneerWalling() walling {
	w := studWalling()
	w.face = "veneer"
	w.drive = func(m *maker) string {
		return fmt.Sprintf("Drill through the leaf with room to spare and drive a screw Ø%s at each, into the stud, as the designer confirms. Leave the cavity open and the leaf unloaded; seal at its face.", m.saidFine(m.job.Plate.Fixing.Screw))
	}
	w.prove = "Nothing is drilled before the designer has confirmed the fixing. Prove each stud with a pilot hole, and the plate level and straight, before any screw is drawn tight."
	w.care = "The veneer carries nothing: never into it alone, no nails. The dust of masonry harms the lungs: draw it off, and wear a mask."
	w.caution = "A masonry veneer carries nothing by itself: never fix the plate to it alone. Designer to confirm how the fixings reach the frame behind the cavity, or how the plate stands clear on posts of its own. Never nails."
	w.into = func(m *maker) string { return "Designer to confirm the length across the cavity. " + intoStuds(m) }
	w.post = "Through the leaf into a confirmed stud, designer to confirm; find cables and pipes before drilling"
	w.clad = "Masonry veneer: carries nothing. Ties, cavity and weep holes are kept as found"
	w.asks = []string{
		"Designer to confirm: may the plate be fixed through the veneer to the frame behind it, or is it to stand on posts of its own?",
		"How wide is the cavity, and what do the fixings do where they cross it?",
	}
	return w
}
