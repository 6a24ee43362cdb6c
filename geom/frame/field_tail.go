package frame

import "plumbcut/geom/frame/keys"

func (d *draft) tailFields() keys.Group {
	t := &d.Rafters.Tail
	return keys.Group{Opt: true,
		Choices: []keys.Choice{{Keys: []string{"shape", "profile"}}},
		Fields: []keys.Field{
			{Key: "overhang", Is: keys.Length(&t.Overhang, keys.Between(0, 5000)), Need: true, Doc: "Level distance from the beam's outer face to the end of the rafters' top edges."},
			{Key: "shape", Is: keys.Word(&t.Shape, TailPlumb, TailSquare, TailBevelled, TailQuarter, TailOgee), Else: "plumb, unless there is a profile",
				Doc: "Shape of the end: cut plumb, square to the rafter, plumb with its lower corner splayed off, square with the corner rounded to a quarter circle, or square with an S-curve below, hollow under the nose and round to the underside."},
			{Key: "nose", Is: keys.Length(&t.Nose, keys.Between(1, 1200)), Else: "half the rafter's plumb depth, or a quarter of its depth",
				Doc: "Height that the end keeps at its top: plumb of a bevelled end, square to the top edge of a quarter round or an ogee."},
			{Key: "bevel", Is: keys.Angle(&t.Splay, keys.Between(5, 80)), Def: "45°", Doc: "Angle of a bevelled end's splay below its nose, from level."},
			{Key: "curve", Is: keys.Length(&t.Curve, keys.Between(5, 5000)), Else: "as far as it is high", Doc: "How far an ogee reaches back along the rafter."},
			{Key: "profile", Is: keys.ListOf(&t.Profile, 1, keys.Zero, endPointFields), Also: []string{"outline", "points"},
				Doc: "Or the shape by points. Lay a square on the top edge at its outer end: the outline starts in that corner and runs through these points, one after the other, to the underside; what is outside it is cut away."},
		}}
}

func endPointFields(p *EndPoint) keys.Kind {
	return keys.Group{
		Choices: []keys.Choice{{Keys: []string{"round", "hollow"}}},
		Fields: []keys.Field{
			{Key: "back", Is: keys.Length(&p.Back, keys.Between(-2000, 5000)), Need: true,
				Doc: "Distance from the corner back towards the house, along the top edge; negative where the outline stands out under it."},
			{Key: "down", Is: keys.Length(&p.Down, keys.Between(0, 1200)), Else: "the underside, where the last point must be",
				Doc: "Distance down from the top edge, square to it."},
			{Key: "round", Is: keys.Length(&p.Round, keys.Between(1, 10_000)), Doc: "The line to this point is an arc of this radius that swells outwards; left out, it is straight."},
			{Key: "hollow", Is: keys.Length(&p.Hollow, keys.Between(1, 10_000)), Doc: "Or an arc of this radius that cuts into the timber."},
		}}
}
