package frame

import "plumbcut/geom/frame/keys"

func (d *draft) braceFields() keys.Group {
	b := &d.Braces
	leg := func(key string, to *float64, doc string) keys.Field {
		return keys.Field{Key: key, Is: keys.Length(to, keys.Between(50, 5000)), Doc: doc}
	}
	return keys.Group{Opt: true,
		Choices: []keys.Choice{{Keys: []string{"down", "length"}, Need: true}, {Keys: []string{"along", "angle"}}},
		Fields: memberFields(&b.Section, &b.Timber, "depth (in the plane of post and beam) x width (out from the wall)",
			leg("down", &b.Down, "From the beam's underside down the post to their lower edge."),
			leg("length", &d.braceLength, "Or the length of their lower edge between post and beam."),
			leg("along", &b.Along, "From the post's side along the beam to their lower edge."),
			keys.Field{Key: "angle", Is: keys.Angle(&d.braceAngle, keys.Between(15, 75)), Else: "45°, or as along gives it",
				Doc: "Or their angle from level."},
			keys.Field{Key: "joint", Is: keys.Word(&b.Joint, BraceButted, BraceHoused, BraceLapped), Def: string(BraceButted), Also: []string{"hold", "end"},
				Doc: "How they meet post and beam: butted, their ends flat against both and screwed; housed, let in to both and screwed; lapped, on the outer faces and bolted through."},
			keys.Field{Key: "housing", Is: keys.Length(&b.Housing, keys.Between(1, 200)), Def: "12 mm", Habit: true, Also: []string{"trench", "rebate", "dado"},
				Doc: "Depth of the housings of housed ones in post and beam."},
			keys.Field{Key: "clearance", Is: keys.Length(&b.Clearance, keys.Between(0, 10)), Def: "0.5 mm", Habit: true,
				Doc: "How much wider such a housing is than the brace."},
			keys.Field{Key: "screws", Is: endScrewFields(&b.Screws, "2"), Also: []string{"fixing", "fixings"}, Doc: "The screws at each end of butted or housed ones."},
			keys.Field{Key: "bolt", Is: d.braceBoltFields(), Also: []string{"bolts"}, Doc: "The bolt at each end of lapped ones."},
			keys.Field{Key: "at", Is: keys.ListOf(&b.At, 1, keys.Zero, braceAtFields), Also: []string{"posts"},
				Doc: "The posts that have them; left out, every post has one on each side where another stands."},
		)}
}

func (d *draft) braceBoltFields() keys.Group {
	b := &d.Braces.Bolt
	return keys.Group{Fields: []keys.Field{
		{Key: "diameter", Is: keys.Length(&b.Diameter, keys.Between(5, 40)), Def: "12 mm", Habit: true, Doc: "Its diameter."},
		{Key: "hole", Is: keys.Length(&b.Hole, keys.Between(5, 45)), Else: "1 mm more than the bolt", Doc: "The hole for it."},
	}}
}

func braceAtFields(a *BraceAt) keys.Kind {
	return keys.Group{Short: "post", Fields: []keys.Field{
		{Key: "post", Is: keys.Count(&a.Post, 1, maxSticks), Need: true, Doc: "Number of the post, from 1 at the left."},
		{Key: "side", Is: keys.Word(&a.Side, Left, Right), Else: "each side where another post stands", Doc: "Its side."},
	}}
}
