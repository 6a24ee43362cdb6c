package frame

import "slices"

// Kind is the kind of a member.
type Kind string

// The kinds. What the model knows of each is its line in kindTable.
const (
	KindPlate   Kind = "wall plate"
	KindBeam    Kind = "beam"
	KindPost    Kind = "post"
	KindBrace   Kind = "knee brace"
	KindRafter  Kind = "rafter"
	KindBlock   Kind = "block"
	KindBatten  Kind = "batten"
	KindLath    Kind = "lath"
	KindSlat    Kind = "slat"
	KindCleat   Kind = "cleat"
	KindFascia  Kind = "fascia"
	KindValance Kind = "valance"
	KindPacker  Kind = "packer"
	KindFooting Kind = "footing"
)

// kindTraits is what the model knows of a kind of member.
type kindTraits struct {
	kind    Kind
	letters string  // its part marks' first letters
	faces   [4]Face // its long faces at V=0, V=Width, W=0 and W=Depth
	ends    [2]string
	along   bool   // a mirror that swaps left and right swaps its ends, not its left and right faces
	key     string // of the job file that describes it
	joined  string // where a long one is joined, before the list of places; empty: nowhere
}

// The long faces of a timber that lies, slopes or stands.
var (
	lyingFaces   = [4]Face{FaceOuter, FaceHouse, FaceBottom, FaceTop}
	slopingFaces = [4]Face{FaceLeft, FaceRight, FaceBottom, FaceTop}
	uprightFaces = [4]Face{FaceLeft, FaceRight, FaceOuter, FaceHouse}
)

// What the ends of a timber are called: the datum end, then the far end.
var (
	alongEnds  = [2]string{"left end", "right end"}
	heightEnds = [2]string{"bottom", "top"}
	braceEnds  = [2]string{"post end", "beam end"}
	outEnds    = [2]string{"house end", "outer end"}
)

// kindTable has the kinds in the order of Frame.Members.
var kindTable = []kindTraits{
	{KindPlate, "WP", lyingFaces, alongEnds, true, "plate", "between rafters, at "},
	{KindBeam, "B", lyingFaces, alongEnds, true, "beam", "over posts, at "},
	{KindPost, "P", uprightFaces, heightEnds, false, "posts", ""},
	{KindBrace, "KB", slopingFaces, braceEnds, false, "braces", ""},
	{KindRafter, "R", slopingFaces, outEnds, false, "rafters", ""},
	{KindBlock, "BL", lyingFaces, alongEnds, true, "blocking", ""},
	{KindBatten, "BT", lyingFaces, alongEnds, true, "battens", "over rafters, at "},
	{KindLath, "LT", slopingFaces, outEnds, false, "laths", "over battens, at "},
	{KindSlat, "SL", lyingFaces, alongEnds, true, "slats", ""},
	{KindCleat, "CL", slopingFaces, outEnds, false, "slats.cleats", ""},
	{KindFascia, "FA", lyingFaces, alongEnds, true, "fascia", "over rafters, at "},
	{KindValance, "VA", lyingFaces, alongEnds, true, "valance", "over posts, at "},
	{KindPacker, "PK", uprightFaces, heightEnds, false, "plate.packers", ""},
	{KindFooting, "F", uprightFaces, heightEnds, false, "posts.footing", ""},
}

// traits is the kind's line in the table; of no kind, an empty one.
func (k Kind) traits() kindTraits {
	i := slices.IndexFunc(kindTable, func(t kindTraits) bool { return t.kind == k })
	if i < 0 {
		return kindTraits{}
	}
	return kindTable[i]
}

// EndName is what an end of a member of the kind is called: FaceStart is its
// datum end.
func (k Kind) EndName(end Face) string {
	names := k.traits().ends
	if end == FaceEnd {
		return names[1]
	}
	return names[0]
}

// EndWord is EndName as the drawings of the frame say it: a free-standing one has
// a front and a rear, and no house.
func (f *Frame) EndWord(k Kind, end Face) string {
	if f.Job.Freestanding() && k.Slopes() {
		return map[Face]string{FaceStart: "rear end", FaceEnd: "front end"}[end]
	}
	return k.EndName(end)
}

// FaceWord is what the drawings of the frame call a long face of a member of a
// kind. In a free-standing frame a post's inner side looks into the frame.
func (f *Frame) FaceWord(k Kind, face Face) string {
	switch {
	case !f.Job.Freestanding():
	case k.Stands() && face == FaceHouse:
		return "inner side"
	case !k.Stands() && face == FaceHouse:
		return "rear side"
	case !k.Stands() && face == FaceOuter:
		return "front side"
	}
	return string(face)
}

// Stands reports whether members of the kind stand upright.
func (k Kind) Stands() bool { return k.traits().faces == uprightFaces }

// Slopes reports whether members of the kind run up or down with their left and
// right faces plumb.
func (k Kind) Slopes() bool { return k.traits().faces == slopingFaces }

// Kinds lists the kinds in the order of Frame.Members.
func Kinds() []Kind {
	var out []Kind
	for _, t := range kindTable {
		out = append(out, t.kind)
	}
	return out
}
