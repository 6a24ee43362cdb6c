package sheets

import (
	"slices"
	"testing"

	"plumbcut/geom/frame"
)

func TestWarningsOfSeveralPostsAreSaidOnce(t *testing.T) {
	var ws []frame.Warning
	for _, words := range []string{"post 1 stands in a doorway", "the beam is long", "post 3 stands in a doorway", "post 2 stands near a pipe", "post 12 stands in a doorway"} {
		ws = append(ws, frame.Warning{Message: words})
	}
	want := []string{
		"Post 1 stands in a doorway. The same holds of posts 3 and 12.",
		"The beam is long.",
		"Post 2 stands near a pipe.",
	}
	if got := warnings(ws); !slices.Equal(got, want) {
		t.Errorf("warnings = %q, want %q", got, want)
	}
}
