package frame

import "plumbcut/geom/frame/keys"

// battenFields are the keys of the battens.
func (d *draft) battenFields() keys.Group {
	b := &d.Battens
	return keys.Group{Opt: true,
		Choices: []keys.Choice{{Keys: []string{"number", "gap", "shade"}, Need: true}},
		Fields: memberFields(&b.Section, &b.Timber, "depth (square to the slope) x width (down it)",
			keys.Field{Key: "lie", Is: keys.Word(&b.Lie, LieOver, LieChecked), Def: string(LieOver), Also: []string{"lay", "way"},
				Doc: "How they lie: over the rafters; checked, in checks across the rafters' top edges."},
			keys.Field{Key: "check", Is: d.checkFields(), Also: []string{"checks", "notch", "trench"},
				Doc: "The checks of battens that are checked into the rafters."},
			keys.Field{Key: "number", Is: keys.Count(&b.Number, 1, maxSticks), Doc: "How many."},
			keys.Field{Key: "gap", Is: keys.Length(&b.Gap, keys.Between(1, 5000)), Doc: "Or the greatest clear gap."},
			keys.Field{Key: "shade", Is: keys.Share(&b.Shade, keys.Between(0.02, 0.98)),
				Doc: "Or the share of the area that they cover at least: a batten's width over its distance from the next, centre to centre, as seen square to the slope."},
			keys.Field{Key: "first", Is: keys.Length(&b.First, anywhere()), Def: "0", Doc: "Near edge of the first, down the slope from the face of plate or rear beam that looks to the front; negative where the rafters lie over that and it stands farther up."},
			keys.Field{Key: "last", Is: keys.Length(&b.Last, anywhere()), Def: "0", Doc: "Far edge of the last, up the slope from the beam's inner face, or from the end of the rafters where they lie over the beam."},
			keys.Field{Key: "overhang", Is: keys.Length(&d.overhang, keys.Between(0, 3000)), Def: "0", Doc: "How far they run beyond the outer faces of the end rafters."},
			keys.Field{Key: "overhang_left", Is: keys.Length(&b.OverLeft, keys.Between(0, 3000)), Else: "overhang", Doc: "The same at the left alone."},
			keys.Field{Key: "overhang_right", Is: keys.Length(&b.OverRight, keys.Between(0, 3000)), Else: "overhang", Doc: "The same at the right alone."},
			keys.Field{Key: "screws", Is: stickScrewFields(&b.Screws, "batten and rafter"), Also: []string{"fixing", "fixings", "nails"},
				Doc: "The screws that hold them down."}),
	}
}

func (d *draft) checkFields() keys.Group {
	k := &d.Battens.Check
	return keys.Group{Short: "rafters", Fields: []keys.Field{
		{Key: "rafters", Is: keys.Length(&k.Rafter, keys.Between(0, 500)), Else: "half the battens' depth, but for what is checked out of the battens",
			Doc: "Depth of the checks across the rafters' top edges; 0: none there."},
		{Key: "battens", Is: keys.Length(&k.Batten, keys.Between(0, 500)), Def: "0", Doc: "Depth of the checks across the battens' undersides, over each rafter."},
		{Key: "clearance", Is: keys.Length(&k.Clearance, keys.Between(0, 10)), Def: "1 mm", Habit: true,
			Doc: "How much wider a check is than what lies in it, in all."},
	}}
}

// lathFields are the keys of the layer over the battens.
func (d *draft) lathFields() keys.Group {
	l := &d.Laths
	return keys.Group{Opt: true,
		Choices: []keys.Choice{{Keys: []string{"number", "gap", "shade"}, Need: true}},
		Fields: memberFields(&l.Section, &l.Timber, "depth (square to the slope) x width (along the wall)",
			keys.Field{Key: "number", Is: keys.Count(&l.Number, 1, maxSticks), Doc: "How many."},
			keys.Field{Key: "gap", Is: keys.Length(&l.Gap, keys.Between(1, 5000)), Doc: "Or the greatest clear gap."},
			keys.Field{Key: "shade", Is: keys.Share(&l.Shade, keys.Between(0.02, 0.98)),
				Doc: "Or the share of the area that they cover at least, by themselves: a lath's width over its distance from the next, centre to centre."},
			keys.Field{Key: "inset", Is: keys.Length(&l.Inset, keys.Between(0, 3000)), Def: "0", Doc: "How far the outer faces of the end laths stand in from the ends of the battens."},
			keys.Field{Key: "overhang", Is: keys.Length(&l.Overhang, keys.Between(0, 3000)), Def: "0", Doc: "How far they run past the outer edges of the first and the last batten, along the slope."},
			keys.Field{Key: "screws", Is: stickScrewFields(&l.Screws, "lath and batten"), Also: []string{"fixing", "fixings", "nails"},
				Doc: "The screws that hold them down."}),
	}
}

// stickScrewFields are the screws of sticks that cross others.
func stickScrewFields(s *BattenScrews, crossing string) keys.Group {
	return keys.Group{Fields: []keys.Field{
		{Key: "each", Is: keys.Count(&s.Each, 1, 10), Else: "1, or 2 where the stick is wider than 70 mm (common practice, no source: confirm)",
			Doc: "How many at each crossing of " + crossing + "."},
		{Key: "diameter", Is: keys.Length(&s.Diameter, keys.Between(2, 20)), Else: "to be stated", Doc: "Their diameter."},
		{Key: "length", Is: keys.Length(&s.Length, keys.Between(10, 500)), Else: "to be stated", Doc: "Their length under the head."},
	}}
}

// slatFields are the keys of slats between the rafters.
func (d *draft) slatFields() keys.Group {
	l := &d.Slats
	c := &l.Cleats
	return keys.Group{Opt: true,
		Choices: []keys.Choice{{Keys: []string{"number", "centres", "shade"}, Need: true}},
		Fields: memberFields(&l.Section, &l.Timber, "depth x width, as if it lay flat in the slope",
			keys.Field{Key: "angle", Is: keys.Angle(&l.Angle, keys.Between(0, 90)), Need: true, Also: []string{"tilt"}, Doc: "By how much they are turned out of the slope: 0 lies flat in it, 90° stands on edge."},
			keys.Field{Key: "raised", Is: keys.Either(&l.OuterUp, "outer side", "house side"), Def: "house side", Doc: "Which of their edges is raised."},
			keys.Field{Key: "number", Is: keys.Count(&l.Number, 1, maxSticks), Doc: "How many in each bay."},
			keys.Field{Key: "centres", Is: keys.Length(&l.Centres, keys.Between(5, 5000)), Also: []string{"spacing", "centers"}, Doc: "Or the greatest distance from one to the next, along the slope."},
			keys.Field{Key: "shade", Is: keys.Share(&l.Shade, keys.Between(0.02, 1)),
				Doc: "Or the share of the area that they cover at least: a slat's width at its angle, as seen square to the slope, over its distance from the next."},
			keys.Field{Key: "first", Is: keys.Length(&l.First, anywhere()), Def: "0", Doc: "Near edge of the first, as seen square to the slope, down it from the plate's outer face."},
			keys.Field{Key: "last", Is: keys.Length(&l.Last, anywhere()), Def: "0", Doc: "Far edge of the last, up the slope from the beam's inner face."},
			keys.Field{Key: "down", Is: keys.Length(&l.Down, keys.Between(0, 1000)), Def: "0", Doc: "How far their highest edges lie below the rafters' top edges."},
			keys.Field{Key: "clearance", Is: keys.Length(&l.Clearance, keys.Between(0, 20)), Def: "2 mm", Habit: true, Doc: "How much shorter a slat is than its bay is wide."},
			keys.Field{Key: "screws", Is: stickScrewFields(&l.Screws, "slat and cleat"), Also: []string{"fixing", "fixings", "nails"}, Doc: "The screws that hold them down on each cleat."},
			keys.Field{Key: "cleats", Is: keys.Group{Fields: memberFields(&c.Section, &c.Timber, "depth (square to the slat) x width (off the rafter's side)",
				keys.Field{Key: "screws", Is: stickScrewFields(&c.Screws, "cleat and rafter"), Also: []string{"fixing", "fixings", "nails"}, Doc: "The screws of each into the rafter."})},
				Need: true, Also: []string{"blocks"}, Doc: "The blocks under their ends, along the rafters' sides."}),
	}
}
