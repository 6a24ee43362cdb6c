package frame

import (
	"errors"
	"strings"
	"testing"
)

// smallJob says no more than a job must. Its lines are cited in the tests.
const smallJob = `plumbcut: 1
project:
  title: Test frame
levels:
  datum: ground at the wall
  ground: 0
plate:
  section: 190x45
  length: 5400
  top: 2600
beam:
  section: 240x65
  out: 3300
posts:
  section: 120x120
  at: [60, 2700, 5340]
rafters:
  section: 140x45
  number: 9
fall:
  drop: 120
`

func TestReadSmallJob(t *testing.T) {
	j, err := Read("job.yaml", []byte(smallJob))
	if err != nil {
		t.Fatal(err)
	}
	if j.Plate.To != 5400 || j.Beam.To != 5400 || j.Wall.From != -600 || j.Wall.To != 6000 {
		t.Errorf("plate to %v, beam to %v, wall %v to %v", j.Plate.To, j.Beam.To, j.Wall.From, j.Wall.To)
	}
}

// TestReadRefuses puts one thing wrong in a sound job and looks at every error
// word for word.
func TestReadRefuses(t *testing.T) {
	for _, tt := range refusals() {
		t.Run(tt.name, func(t *testing.T) {
			if n := strings.Count(smallJob, tt.old); n != 1 {
				t.Fatalf("%q is %d times in the sound job", tt.old, n)
			}
			_, err := Read("job.yaml", []byte(strings.Replace(smallJob, tt.old, tt.new, 1)))
			var errs Errors
			if !errors.As(err, &errs) {
				t.Fatalf("error is %v, want %s", err, tt.want)
			}
			if got := err.Error(); got != tt.want {
				t.Errorf("got\n%s\nwant\n%s", got, tt.want)
			}
			for _, e := range errs {
				if e.Rule != tt.rule {
					t.Errorf("rule %q, want %q", e.Rule, tt.rule)
				}
			}
		})
	}
}

type refusal struct {
	name     string
	old, new string
	rule     Rule
	want     string
}
