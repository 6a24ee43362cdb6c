package frame

import "plumbcut/geom/frame/keys"

func endScrewFields(s *EndScrews, each string) keys.Group {
	return keys.Group{Fields: []keys.Field{
		{Key: "each", Is: keys.Count(&s.Each, 1, 10), Def: each, Habit: true, Doc: "How many at each place."},
		{Key: "diameter", Is: keys.Length(&s.Diameter, keys.Between(2, 40)), Else: "to be stated", Doc: "Their diameter."},
		{Key: "length", Is: keys.Length(&s.Length, keys.Between(20, 600)), Else: "to be stated", Doc: "Their length."},
	}}
}

func (d *draft) blockingFields() keys.Group {
	b := &d.Blocking
	return keys.Group{Opt: true, Fields: memberFields(&b.Section, &b.Timber, "depth (upright) x width (through)",
		keys.Field{Key: "set", Is: keys.Word(&b.Set, BlockSquare, BlockPlumb), Def: string(BlockSquare),
			Doc: "How they stand: square to the rafters, their tops in line with the rafters' top edges, or plumb."},
		keys.Field{Key: "at", Is: keys.ListOf(&b.Rows, 1, keys.Zero, blockRowFields), Need: true, Also: []string{"rows"},
			Doc: "The rows, from the house outwards."},
		keys.Field{Key: "screws", Is: endScrewFields(&b.Screws, "2"), Also: []string{"nails", "fixing"}, Doc: "The screws at each end of each."},
	)}
}

func blockRowFields(r *BlockRow) keys.Kind {
	return keys.Group{Short: "down",
		Choices: []keys.Choice{{Keys: []string{"down", "over"}, Need: true}},
		Fields: []keys.Field{
			{Key: "down", Is: keys.Length(&r.Down, distance()), Doc: "Distance of their middle down the slope from the plate's outer face."},
			{Key: "over", Is: keys.Word(&r.Over, "plate", "beam"), Doc: "Or the timber over which they stand, under rafters that lie over it."},
		}}
}

func (d *draft) fasciaFields() keys.Group {
	f := &d.Fascia
	return keys.Group{Opt: true, Fields: memberFields(&f.Section, &f.Timber, "depth (upright) x thickness",
		keys.Field{Key: "overhang", Is: keys.Length(&f.Over, keys.Between(0, 3000)), Def: "0", Doc: "How far it runs beyond the outer faces of the end rafters."},
		keys.Field{Key: "screws", Is: endScrewFields(&f.Screws, "2"), Also: []string{"nails", "fixing"}, Doc: "The screws into each rafter."},
	)}
}

func (d *draft) valanceFields() keys.Group {
	v := &d.Valance
	return keys.Group{Opt: true,
		Choices: []keys.Choice{{Keys: []string{"set_back", "below"}}},
		Fields: memberFields(&v.Section, &v.Timber, "depth (upright) x thickness",
			keys.Field{Key: "set", Is: keys.Word(&v.Set, ValanceBetween, ValanceFace), Def: string(ValanceBetween),
				Doc: "Where it hangs: between the posts, up under the beam, or on the beam's outer face, across the posts."},
			keys.Field{Key: "set_back", Is: keys.Length(&v.Back, keys.Between(0, 1000)), Def: "0", Doc: "Between posts: how far its outer face lies behind theirs."},
			keys.Field{Key: "below", Is: keys.Length(&v.Below, keys.Between(5, 1200)), Else: "half its depth", Doc: "On the face: how far it hangs below the beam."},
			keys.Field{Key: "screws", Is: endScrewFields(&v.Screws, "2"), Also: []string{"nails", "fixing"}, Doc: "The screws into each post."},
		)}
}

// fillTrim sets what hangs on other values.
func (f *filler) fillTrim() {
	if v := &f.Valance; v.Set == ValanceFace && !f.Given("valance.below") {
		v.Below = v.Section.Depth / 2
	}
}
