package sheets

import "fmt"

// studWalling is cladding on studs, screwed through.
func studWalling() walling {
	return walling{
		face: "cladding",
		find: func(m *maker) string {
			if n := len(m.job.Wall.Studs); n > 0 {
				return fmt.Sprintf("Find every stud and mark its centre: the drawings take %s, so move the screws if yours stand elsewhere.", count(n, "stud"))
			}
			return "Find every stud and mark its centre on the wall."
		},
		marked: func(m *maker) string { return m.onStuds("the line") },
		drive: func(m *maker) string {
			return fmt.Sprintf("Drive a screw Ø%s at each, into the stud, and seal it at the cladding.", m.saidFine(m.job.Plate.Fixing.Screw))
		},
		prove:   "Prove each stud with a pilot hole, and the plate level and straight, before any screw is drawn tight.",
		care:    "Into confirmed studs only: no nails, never into cladding alone. Some authorities allow no fixing through cladding; ask first.",
		plan:    "Prove every stud by drilling a pilot hole before the plate goes up.",
		look:    "where the studs really are",
		hold:    "Hold the screw holes until the studs are found: measure their centres from the left end. Bore on a stud",
		caution: "Fix the plate with screws or bolts into confirmed studs or the material stated, never with nails and never into cladding alone. Some authorities do not allow fixing through cladding: ask first.",
		into:    intoStuds,
		post:    "Into a confirmed stud only; find cables and pipes before drilling",
		clad:    "Cladding as found: some authorities allow no fixing through it; ask first",
	}
}

// onStuds says how fixings are moved on to what they go into.
func (m *maker) onStuds(line string) string {
	screw, stud := "the screw", m.job.Wall.StudName()
	if m.job.Plate.Packer.Thickness > 0 {
		screw = "the screw and its packer"
	}
	if m.studless() {
		return fmt.Sprintf("Find every %s and mark its centre across %s, and move %s on to the nearest, clear of the rafters.", stud, line, screw)
	}
	return fmt.Sprintf("Find every %s and mark its centre across %s. Where one stands elsewhere than drawn, move %s on to it, clear of the rafters.", stud, line, screw)
}

// intoStuds is said of a screw into a stud.
func intoStuds(m *maker) string {
	into := "Into confirmed studs only, never into cladding alone. Find cables and pipes before drilling."
	if m.studless() {
		into = "Find and mark the studs first, and cables and pipes. Into studs only, never into cladding alone."
	}
	if m.needsStuds() {
		into += " Where the plan says blocking, fix it between the studs first."
	}
	return into
}
