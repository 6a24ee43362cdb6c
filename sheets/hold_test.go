package sheets

import (
	"os"
	"slices"
	"strings"
	"testing"

	"plumbcut/geom/frame"
)

// exampleOf reads the job of an example.
func exampleOf(t *testing.T, name string) []byte {
	t.Helper()
	text, err := os.ReadFile("../examples/" + name + "/" + name + ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// TestHoldingsAreSaid: every way of holding rafters has its details, and the
// words of one way are not said where another is.
func TestHoldingsAreSaid(t *testing.T) {
	words := map[frame.Hold][]string{
		frame.Housed:  {"Cut a housing", "let into the", "Housings are wider", "The housing holds"},
		frame.Over:    {"put a cross where each rafter lies", "with a heel height of", "level seat with a plumb heel", "The birdsmouth holds"},
		frame.Between: {"there the hangers go", "in a hanger", "butt tight against the face", "The hanger carries"},
	}
	for _, c := range []struct {
		example     string
		plate, beam frame.Hold
		details     []string
	}{
		{"courtyard", frame.Housed, frame.Housed, []string{"Rafter housed in wall plate", "Rafter housed in beam"}},
		{"orchard", frame.Over, frame.Over, []string{"Rafter over wall plate", "Rafter over beam"}},
		{"gallery", frame.Between, frame.Between, []string{"Rafter hung on wall plate", "Rafter hung on beam"}},
		{"workshop", frame.Housed, frame.Over, []string{"Rafter housed in wall plate", "Rafter over beam"}},
	} {
		m := detailMaker(t, exampleOf(t, c.example), nil)
		var found []string
		for _, d := range m.findDetails() {
			if strings.HasPrefix(d.title, "Rafter") {
				found = append(found, d.title)
			}
		}
		if !slices.Equal(found, c.details) {
			t.Errorf("%s: details %q, want %q", c.example, found, c.details)
		}
		all := strings.Join(slices.Concat(m.sayPlate(), m.sayBeam(), m.generalNotes(), m.sayRafters(), []string{m.howHeld()}), "\n")
		for hold, ws := range words {
			for _, w := range ws {
				if said, want := strings.Contains(all, w), hold == c.plate || hold == c.beam; said != want {
					t.Errorf("%s: %q said: %t, want %t", c.example, w, said, want)
				}
			}
		}
	}
}

// TestBirdsmouthWork reads the marking list of the orchard's rafter: a heel
// height of 110 as stated, the seats as wide as the timbers below, 70 over the
// beam and 60 to the rafter's end over the plate of 45 (15 past it).
func TestBirdsmouthWork(t *testing.T) {
	m := detailMaker(t, exampleOf(t, "orchard"), nil)
	var said []string
	for _, s := range m.timbers() {
		if s.Kind != frame.KindRafter {
			continue
		}
		for _, w := range s.works() {
			if strings.HasPrefix(w.name, "birdsmouth") {
				said = append(said, w.how)
			}
		}
	}
	if len(said) != 2 || !strings.Contains(said[0], "heel 110, seat 60") || !strings.Contains(said[1], "heel 110, seat 70") {
		t.Errorf("birdsmouths %q, want heels of 110, seats of 60 and 70", said)
	}
}

// TestKeepOutsOnPlan: the set-out plan names every place where no post may
// stand.
func TestKeepOutsOnPlan(t *testing.T) {
	m := detailMaker(t, exampleOf(t, "gallery"), nil)
	set := m.drawAll(m.setoutSheets())
	var text string
	for _, s := range set.Sheets {
		for _, i := range s.Items {
			if x := i.Text; x != nil {
				text += x.String + " "
			}
		}
	}
	for _, k := range m.job.Site.KeepOuts {
		if !strings.Contains(text, strings.Fields(k.Name)[0]) {
			t.Errorf("the set-out plan does not name the %s", k.Name)
		}
	}
}
