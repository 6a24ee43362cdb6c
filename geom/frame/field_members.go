package frame

import "plumbcut/geom/frame/keys"

// memberFields are the keys that every kind of member has first.
func memberFields(s *Section, t *Timber, upright string, more ...keys.Field) []keys.Field {
	return append([]keys.Field{
		{Key: "section", Is: keys.Size(&s.Depth, &s.Width, keys.Between(5, 1200)), Need: true, Also: []string{"size"},
			Doc: "Actual, dressed size: " + upright + "."},
		{Key: "nominal", Is: keys.Text(&t.Nominal, titleText), Doc: "The size's name in the trade, if it is to be printed."},
		{Key: "timber", Is: timberFields(t), Also: []string{"material"}, Doc: "What it is made of, where that is not what the job's timber says."},
	}, more...)
}

const lyingSize = "depth (upright) x width"

func (d *draft) wallFields() keys.Group {
	w := &d.Wall
	return keys.Group{Fields: []keys.Field{
		{Key: "kind", Is: keys.Word(&w.Kind, Backings()...), Def: string(OnStuds), Also: []string{"type", "material", "of"},
			Doc: "What the plate is fixed to, and posts beside a return: cladding on studs, screws through it into the studs; cladding cut back to them; solid or filled masonry, or concrete, with anchors; masonry veneer, to the studs behind it; unfilled masonry; the fascia at the eaves."},
		{Key: "from", Is: keys.Length(&w.From, anywhere()), Else: "600 mm beyond the plate, or the return there", Doc: "Left end of what is drawn."},
		{Key: "to", Is: keys.Length(&w.To, anywhere()), Else: "600 mm beyond the plate, or the return there", Doc: "Right end of what is drawn."},
		{Key: "cladding", Is: keys.Length(&w.Cladding, keys.Between(0, 500)), Def: "18 mm", Habit: true, Also: []string{"leaf", "render"},
			Doc: "Thickness of the cladding; of the leaf of a veneer, which must be given; of render on masonry or concrete, where it is 0 unless given."},
		{Key: "cavity", Is: keys.Length(&w.Cavity, keys.Between(0, 500)), Def: "50 mm", Habit: true, Doc: "Between a masonry veneer and the studs."},
		{Key: "cut_back", Is: keys.Group{Fields: []keys.Field{
			{Key: "above", Is: keys.Length(&w.CutBack.Above, keys.Between(0, 500)), Def: "40 mm", Habit: true, Doc: "Above the plate, and above the beam at a post on a return."},
			{Key: "below", Is: keys.Length(&w.CutBack.Below, keys.Between(0, 500)), Def: "10 mm", Habit: true, Doc: "Below the plate."},
			{Key: "ends", Is: keys.Length(&w.CutBack.Ends, keys.Between(0, 500)), Def: "10 mm", Habit: true, Doc: "Beyond the plate's ends and the sides of a post."},
		}}, Doc: "How far cladding that is cut back stops from the timber."},
		{Key: "flashing", Is: keys.Text(&w.Flashing, lineText), Doc: "What is stated of the flashing over a plate behind which the cladding is cut back."},
		{Key: "fascia", Is: fasciaFields(&w.Fascia), Doc: "The fascia that the plate is fixed to. Distances out are then measured from its outer face."},
		{Key: "studs", Is: d.studFields(), Doc: "Where the studs are, or the ends of the house's rafters behind a fascia; left out, they are to be found on site."},
		{Key: "returns", Is: keys.ListOf(&w.Returns, 0, keys.Zero, returnFields), Also: []string{"corners"},
			Doc: "Walls of the house that come out towards the viewer."},
		{Key: "openings", Is: keys.ListOf(&d.openings, 0, keys.Zero, openingFields), Also: []string{"doors", "windows"},
			Doc: "Doors and windows in the wall."},
		{Key: "soffit", Is: keys.Group{Opt: true, Fields: []keys.Field{
			{Key: "level", Is: keys.Length(&w.Soffit, anywhere()), Need: true, Doc: "Its underside."},
			{Key: "out", Is: keys.Length(&w.SoffitOut, keys.Between(1, far)), Need: true, Doc: "How far it runs out from the cladding."},
		}}, Also: []string{"eaves"}, Doc: "The soffit above; left out, there is none near."},
	}}
}

func fasciaFields(f *EavesBoard) keys.Group {
	return keys.Group{Opt: true, Fields: []keys.Field{
		{Key: "thickness", Is: keys.Length(&f.Thickness, keys.Between(5, 200)), Def: "20 mm", Habit: true, Doc: "Its thickness."},
		{Key: "depth", Is: keys.Length(&f.Depth, keys.Between(50, 1200)), Need: true, Also: []string{"height"}, Doc: "Its height."},
		{Key: "underside", Is: keys.Length(&f.Underside, anywhere()), Need: true, Doc: "Level of its underside and of the soffit."},
		{Key: "eave", Is: keys.Length(&f.Eave, keys.Between(1, far)), Need: true, Also: []string{"overhang"}, Doc: "From its outer face back to the wall's cladding."},
		{Key: "gutter", Is: keys.Group{Opt: true, Fields: []keys.Field{
			{Key: "underside", Is: keys.Length(&f.Gutter.Underside, anywhere()), Need: true, Doc: "Level of its underside, which the plate stays below."},
			{Key: "height", Is: keys.Length(&f.Gutter.Height, keys.Between(10, 500)), Def: "100 mm", Habit: true, Doc: "Its height."},
			{Key: "out", Is: keys.Length(&f.Gutter.Out, keys.Between(10, 500)), Def: "125 mm", Habit: true, Doc: "How far it comes out from the fascia."},
		}}, Doc: "The gutter on it; left out, there is none near."},
	}}
}

func (d *draft) studFields() keys.Group {
	w := &d.Wall
	position := func(x *float64) keys.Kind { return keys.Length(x, anywhere()) }
	return keys.Group{Opt: true,
		Choices: []keys.Choice{{Keys: []string{"first", "at"}, Need: true}},
		Fields: []keys.Field{
			{Key: "first", Is: keys.Length(&d.studFirst, anywhere()), Doc: "Centre of the first stud; the others follow to the right."},
			{Key: "spacing", Is: keys.Length(&d.studSpacing, keys.Between(50, 5000)), Def: "600 mm", Habit: true, With: "first", Also: []string{"centres", "centers"},
				Doc: "Centre to centre."},
			{Key: "at", Is: keys.ListOf(&w.Studs, 1, keys.Zero, position), Doc: "Or the centres one by one, from left to right."},
			{Key: "width", Is: keys.Length(&w.StudWidth, keys.Between(10, 500)), Def: "45 mm", Habit: true, Doc: "Width of a stud along the wall."},
		}}
}

func returnFields(r *Return) keys.Kind {
	return keys.Group{Fields: []keys.Field{
		{Key: "side", Is: keys.Word(&r.Side, Left, Right), Need: true, Doc: "At which end of the job it is."},
		{Key: "at", Is: keys.Length(&r.At, anywhere()), Need: true, Doc: "Face of its cladding, along."},
		{Key: "length", Is: keys.Length(&r.Length, keys.Between(1, far)), Need: true, Doc: "How far it comes out from this wall's cladding."},
	}}
}

func openingFields(o *openingDraft) keys.Kind {
	return keys.Group{
		Choices: []keys.Choice{{Keys: []string{"door", "window"}, Need: true}},
		Fields: []keys.Field{
			{Key: "door", Is: keys.Text(&o.door, titleText), Doc: "Name of a door."},
			{Key: "window", Is: keys.Text(&o.window, titleText), Doc: "Name of a window."},
			{Key: "from", Is: keys.Length(&o.From, anywhere()), Need: true, Doc: "Left side, along."},
			{Key: "to", Is: keys.Length(&o.To, anywhere()), Need: true, Doc: "Right side, along."},
			{Key: "sill", Is: keys.Length(&o.Sill, anywhere()), Else: "the deck's level at a door; a window must have it", Doc: "Level of its sill."},
			{Key: "head", Is: keys.Length(&o.Head, anywhere()), Need: true, Doc: "Level of its head."},
		}}
}

func (d *draft) plateFields() keys.Group {
	p := &d.Plate
	return keys.Group{Opt: true,
		Choices: []keys.Choice{{Keys: []string{"top", "underside"}, Need: true}},
		Fields: memberFields(&p.Section, &p.Timber, lyingSize,
			keys.Field{Key: "from", Is: keys.Length(&p.From, anywhere()), Def: "0", Doc: "Left end, along: the zero of all distances along the wall is yours to choose."},
			keys.Field{Key: "length", Is: keys.Length(&d.plateLength, keys.Between(300, far)), Need: true, Doc: "Overall length."},
			keys.Field{Key: "top", Is: keys.Length(&p.Top, anywhere()), Doc: "Level of its top."},
			keys.Field{Key: "underside", Is: keys.Length(&d.underside, anywhere()), Also: []string{"bottom"}, Doc: "Or the level of its underside."},
			keys.Field{Key: "packers", Is: packerFields(&p.Packer, "the plate's depth"), Also: []string{"spacers"},
				Doc: "Blocks that hold it off the cladding, one at each screw; left out, it lies on the cladding."},
			holdField(&p.Hold), housing(&p.Housing), rafterDrop(&p.Drop, "its outer face"),
			keys.Field{Key: "fixing", Is: fixingFields(&p.Fixing, append(rowFields(&p.Fixing), keys.Field{
				Key: "from_rafter", Is: keys.Length(&p.Fixing.FromRafter, keys.Between(0, 1000)), Def: "75 mm", Habit: true,
				Doc: "Least distance of a screw's centre from the side of a rafter's housing."})...),
				Also: []string{"fixings", "screws", "anchors"}, Doc: "The screws into the studs, or the anchors into masonry."}),
	}
}

func housing(to *float64) keys.Field {
	return keys.Field{Key: "housing", Is: keys.Length(to, keys.Between(1, 500)), Def: "12 mm", Habit: true,
		Also: []string{"trench", "rebate", "dado"}, Doc: "Depth of the rafters' housings in it."}
}

func holdField(to *Hold) keys.Field {
	return keys.Field{Key: "rafters", Is: keys.Word(to, Housed, Over, Between), Def: string(Housed), Also: []string{"hold", "joint"},
		Doc: "How it holds the rafters: housed, their ends let into its face; over, lying over it on a birdsmouth; between, butted against its face in hangers."}
}

func rafterDrop(to *float64, face string) keys.Field {
	return keys.Field{Key: "rafter_drop", Is: keys.Length(to, keys.Between(0, 1000)), Def: "0",
		Doc: "How far the rafters' top edges lie below its top, at " + face + "."}
}

func packerFields(p *Packer, height string) keys.Group {
	return keys.Group{Opt: true, Fields: []keys.Field{
		{Key: "thickness", Is: keys.Length(&p.Thickness, keys.Between(1, 500)), Need: true, Doc: "How far they hold the timber off the wall."},
		{Key: "width", Is: keys.Length(&p.Width, keys.Between(5, 1000)), Else: "60 mm", Doc: "Width across the wall's face."},
		{Key: "height", Is: keys.Length(&p.Height, keys.Between(5, 1200)), Else: height, Doc: "Height."},
	}}
}

func fixingFields(f *Fixing, more ...keys.Field) keys.Group {
	return keys.Group{Fields: append([]keys.Field{
		{Key: "screw", Is: keys.Length(&f.Screw, keys.Between(3, 40)), Def: "12 mm", Habit: true, Also: []string{"diameter"}, Doc: "Diameter of the coach screws or anchors."},
		{Key: "length", Is: keys.Length(&f.Length, keys.Between(20, 1000)), Else: "to be stated", Doc: "Their length under the head."},
		{Key: "hole", Is: keys.Length(&f.Hole, keys.Between(3, 45)), Else: "the screw's diameter", Doc: "Clearance hole through the timber."},
		{Key: "spacing", Is: keys.Length(&f.Spacing, keys.Between(50, 5000)), Def: "900 mm", Habit: true, Also: []string{"centres", "centers"},
			Doc: "Greatest distance from screw to screw, along the timber."},
		{Key: "from_edge", Is: keys.Length(&f.FromEdge, keys.Between(1, 2000)), Else: "to be stated",
			Doc: "Least distance of an anchor from an edge of the masonry or concrete: an opening, an end, the top."},
		{Key: "stated", Is: keys.Text(&f.Stated, lineText), Doc: "What others have stated of the fixing, such as the kind of anchor and its depth in the wall."},
	}, more...)}
}

// rowFields are the keys of fixings that may stand in two rows.
func rowFields(f *Fixing) []keys.Field {
	return []keys.Field{
		{Key: "rows", Is: keys.Word(&f.Rows, OneRow, Staggered), Def: string(OneRow), Doc: "One row along the middle of the plate, or staggered, high and low by turns."},
		{Key: "row_edge", Is: keys.Length(&f.RowEdge, keys.Between(10, 600)), Else: "a quarter of the plate's depth", Doc: "Of staggered fixings, from the plate's nearer edge."},
	}
}

func (d *draft) beamFields() keys.Group {
	b := &d.Beam
	return keys.Group{Fields: memberFields(&b.Section, &b.Timber, lyingSize,
		keys.Field{Key: "from", Is: keys.Length(&b.From, anywhere()), Else: "that of the plate or rear beam", Doc: "Left end, along."},
		keys.Field{Key: "length", Is: keys.Length(&d.beamLength, keys.Between(300, far)), Else: "that of the plate or rear beam; on the skew, so much that it reaches as far along", Doc: "Overall length, on its outer face."},
		keys.Field{Key: "out", Is: d.outFields(), Need: true, Also: []string{"projection", "distance"},
			Doc: "Distance of its outer face from the outer face of the cladding, or from the base line of a free-standing frame; of a beam that is not parallel with the wall, at both ends."},
		holdField(&b.Hold), housing(&b.Housing), rafterDrop(&b.Drop, "its inner face"))}
}

// outFields say how far out the beam is: one distance, or one at each end.
func (d *draft) outFields() keys.Group {
	o := &d.beamOut
	at := keys.Between(100, far)
	return keys.Group{Short: "at",
		Choices: []keys.Choice{{Keys: []string{"at", "left"}, Need: true}},
		Fields: []keys.Field{
			{Key: "at", Is: keys.Length(&o.one, at), Doc: "Everywhere: the beam is parallel with the wall."},
			{Key: "left", Is: keys.Length(&o.left, at), With: "right", Doc: "Or at its left end."},
			{Key: "right", Is: keys.Length(&o.right, at), With: "left", Doc: "And at its right end."},
		}}
}

func (d *draft) rearFields() keys.Group {
	b := &d.Rear
	return keys.Group{Opt: true,
		Choices: []keys.Choice{{Keys: []string{"top", "underside"}, Need: true}},
		Fields: memberFields(&b.Section, &b.Timber, lyingSize,
			keys.Field{Key: "from", Is: keys.Length(&b.From, anywhere()), Def: "0", Doc: "Left end, along: the zero of all distances along is yours to choose."},
			keys.Field{Key: "length", Is: keys.Length(&d.rearLength, keys.Between(300, far)), Need: true, Doc: "Overall length."},
			keys.Field{Key: "top", Is: keys.Length(&b.Top, anywhere()), Doc: "Level of its top."},
			keys.Field{Key: "underside", Is: keys.Length(&d.rearUnder, anywhere()), Also: []string{"bottom"}, Doc: "Or the level of its underside."},
			holdField(&b.Hold), housing(&b.Housing), rafterDrop(&b.Drop, "its inner face")),
	}
}

func (d *draft) postsFields() keys.Group {
	p := &d.Posts
	first := func() Post { return d.post }
	return keys.Group{Fields: memberFields(&p.Section, &p.Timber, "depth (out from the wall) x width (along it)", append(d.meetFields(),
		keys.Field{Key: "chamfer", Is: keys.Angle(&p.Chamfer, keys.Between(0, 45)), Def: "15°", Habit: true,
			Doc: "Slope of the post's top behind the beam or beside it, so that water runs off to the house side; 0 is level."},
		keys.Field{Key: "rod", Is: keys.Group{Opt: true, Fields: []keys.Field{
			{Key: "diameter", Is: keys.Length(&p.Rod.Diameter, keys.Between(4, 50)), Need: true, Doc: "Its diameter."},
			{Key: "hole", Is: keys.Length(&p.Rod.Hole, keys.Between(4, 60)), Else: "the rod's diameter and 2 mm", Doc: "Hole for it through beam and into post."},
			{Key: "into_post", Is: keys.Length(&p.Rod.IntoPost, keys.Between(20, 2000)), Else: "ten diameters", Doc: "Depth of the hole in the post."},
			{Key: "above", Is: keys.Length(&p.Rod.Above, keys.Between(0, 500)), Def: "30 mm", Habit: true, Doc: "How far it stands above the beam, for washer and nut."},
			{Key: "bar", Is: keys.Length(&p.Rod.Bar, keys.Between(100, far)), Def: "1 m", Habit: true, Doc: "Length of the bars that it is sold in."},
		}}, Doc: "A threaded rod upright through the beam into each post; left out, there is none."},
		baseField(&d.post.Base, "concrete"),
		keys.Field{Key: "footing", Is: footingFields(&d.post.Footing), Also: []string{"footings", "foundation"}, Doc: "The concrete under each post."},
		keys.Field{Key: "shoe", Is: shoeFields(&d.post.Shoe), Also: []string{"post_base", "foot"}, Doc: "What holds a post on a slab or deck that is there already."},
		keys.Field{Key: "packers", Is: packerFields(&d.post.Packer, "150 mm"), Also: []string{"spacers"}, Doc: "Blocks between a post and the return that it is fixed to."},
		keys.Field{Key: "fixing", Is: fixingFields(&d.post.Fixing), Also: []string{"fixings", "screws"}, Doc: "The screws of a post that is fixed to a return."},
		keys.Field{Key: "at", Is: keys.ListOf(&p.At, 1, first, postFields), Need: true, Also: []string{"positions"},
			Doc: "The posts from left to right: the distance of each one's centre along the wall, or keys."},
		keys.Field{Key: "rear", Is: keys.ListOf(&d.rearPosts, 1, first, rearPostFields), Also: []string{"rear_posts", "back"},
			Doc: "The posts under the rear beam of a free-standing frame in the same way; left out, each stands opposite one under the front beam."})...)}
}

func baseField(to *Base, def string) keys.Field {
	return keys.Field{Key: "base", Is: keys.Word(to, InConcrete, OnStirrup, OnSlab, OnDeck), Def: def,
		Doc: "Set in concrete with a pad below; on a stirrup above it; or, with no footing dug, in a shoe on an existing slab or on a deck over its joists, at levels.deck."}
}

func footingFields(f *Footing) keys.Group {
	return keys.Group{Fields: []keys.Field{
		{Key: "shape", Is: keys.Either(&f.Round, "round", "square"), Def: "round", Doc: "Its shape in plan."},
		{Key: "size", Is: keys.Length(&f.Size, keys.Between(50, 5000)), Def: "400 mm", Habit: true, Doc: "Its diameter or side."},
		{Key: "depth", Is: keys.Length(&f.Depth, keys.Between(50, 5000)), Def: "700 mm", Habit: true, Doc: "Depth of the hole below finished ground."},
		{Key: "pad", Is: keys.Length(&f.Pad, keys.Between(0, 2000)), Def: "100 mm", Habit: true, Doc: "Concrete below the end of a post that is set in it."},
		{Key: "collar", Is: keys.Length(&f.Collar, keys.Between(0, 1000)), Def: "30 mm", Habit: true, Doc: "How far the concrete stands above the ground at the post."},
		{Key: "stand", Is: keys.Length(&f.Stand, keys.Between(0, 1000)), Def: "75 mm", Habit: true, Doc: "Height of the end of a post on a stirrup above its concrete."},
	}}
}

func shoeFields(b *Shoe) keys.Group {
	return keys.Group{Fields: []keys.Field{
		{Key: "stand", Is: keys.Length(&b.Stand, keys.Between(0, 1000)), Def: "75 mm", Habit: true, Doc: "Height of the post's end above the slab or deck."},
		{Key: "fixings", Is: keys.Count(&b.Fixings, 1, 20), Else: "to be stated", Also: []string{"anchors", "bolts"}, Doc: "How many anchors or bolts hold each shoe down."},
		{Key: "diameter", Is: keys.Length(&b.Diameter, keys.Between(3, 40)), Else: "to be stated", Doc: "Their diameter."},
		{Key: "length", Is: keys.Length(&b.Length, keys.Between(20, 1000)), Else: "to be stated", Doc: "Their length."},
		{Key: "from_edge", Is: keys.Length(&b.FromEdge, keys.Between(1, 5000)), Else: "to be stated", Doc: "Least distance of the post from the edge of the slab or deck; less is warned of."},
		{Key: "stated", Is: keys.Text(&b.Stated, lineText), Doc: "What others have stated of shoe and anchors."},
	}}
}

// postFields are the keys of one post. What it does not say is as for all.
func postFields(p *Post) keys.Kind {
	return keys.Group{Short: "at", Fields: []keys.Field{
		{Key: "at", Is: keys.Length(&p.Along, anywhere()), Need: true, Doc: "Its centre, along."},
		{Key: "ground", Is: keys.Length(&p.Ground, anywhere()), Else: "as under levels", Doc: "Level of the finished ground there; not with levels.ground_line, which says it."},
		{Key: "wall", Is: keys.Word(&p.Wall, Left, Right), Also: []string{"return", "side"}, Doc: "The return that it is fixed to; left out, it stands free."},
		asForAll(baseField(&p.Base, "")),
		asForAll(keys.Field{Key: "footing", Is: footingFields(&p.Footing), Doc: "Its footing."}),
		asForAll(keys.Field{Key: "shoe", Is: shoeFields(&p.Shoe), Doc: "Its shoe."}),
		asForAll(keys.Field{Key: "packers", Is: packerFields(&p.Packer, "as for all posts"), With: "wall", Doc: "Its packers."}),
		asForAll(keys.Field{Key: "fixing", Is: fixingFields(&p.Fixing), With: "wall", Doc: "Its screws."}),
	}}
}

// rearPostFields are the keys of a post under a rear beam.
func rearPostFields(p *Post) keys.Kind {
	return keys.Group{Short: "at", Fields: []keys.Field{
		{Key: "at", Is: keys.Length(&p.Along, anywhere()), Need: true, Doc: "Its centre, along; the ground there is as high as under the front beam."},
		asForAll(baseField(&p.Base, "")),
		asForAll(keys.Field{Key: "footing", Is: footingFields(&p.Footing), Doc: "Its footing."}),
	}}
}

// asForAll turns a key of all posts into that of one: what is left out has been
// set already.
func asForAll(f keys.Field) keys.Field {
	f.Def, f.Else, f.Habit, f.Need = "", "as for all posts", false, false
	if g, ok := f.Is.(keys.Group); ok {
		of := make([]keys.Field, len(g.Fields))
		for i, sub := range g.Fields {
			of[i] = asForAll(sub)
		}
		g.Fields = of
		f.Is = g
	}
	return f
}

func (d *draft) rafterFields() keys.Group {
	r := &d.Rafters
	return keys.Group{
		Choices: []keys.Choice{{Keys: []string{"number", "centres"}, Need: true}, {Keys: []string{"ends", "inset"}}},
		Fields: memberFields(&r.Section, &r.Timber, lyingSize,
			keys.Field{Key: "number", Is: keys.Count(&r.Number, 2, maxSticks), Doc: "How many."},
			keys.Field{Key: "centres", Is: keys.Length(&r.Centres, keys.Between(10, far)), Also: []string{"spacing", "centers"}, Doc: "Or the greatest distance from centre to centre."},
			keys.Field{Key: "ends", Is: keys.Word(&r.Ends, EndsFlush, EndsCentred), Else: "flush, unless there is an inset",
				Doc: "End rafters with their outer faces flush with the ends of plate and beam, or centred on the ends."},
			keys.Field{Key: "inset", Is: keys.Length(&r.Inset, keys.Between(0, far)), Doc: "Or the distance of their outer faces from the ends."},
			keys.Field{Key: "clearance", Is: keys.Length(&r.Clearance, keys.Between(0, 10)), Def: "0.5 mm", Habit: true,
				Doc: "How much wider a housing is than the rafter, in all."},
			keys.Field{Key: "seat", Is: keys.Word(&r.Seat, SeatFollows, SeatLevel), Def: string(SeatFollows),
				Doc: "Whether the floor of a housing lies along the rafter, or the rafter's end is cut to a level seat."},
			keys.Field{Key: "heel", Is: keys.Length(&r.Heel, keys.Between(5, 1200)), Also: []string{"heel_height"},
				Else: "such that the widest timber under them bears over its whole width, but at least two thirds of their plumb depth",
				Doc:  "Plumb height from the seat on a timber that they lie over to their top edge, the same on each."},
			keys.Field{Key: "head", Is: keys.Length(&r.Head, keys.Between(0, 1000)), Def: "0",
				Doc: "How far their upper ends run past the inner face of a plate, or the outer face of a rear beam, that they lie over."},
			keys.Field{Key: "tail", Is: d.tailFields(), Also: []string{"overhang", "eave"}, Doc: "What runs past a beam that they lie over; left out, they end at its outer face."},
			keys.Field{Key: "straps", Is: d.strapFields(), Also: []string{"strap", "ties", "tie_down"},
				Doc: "A metal strap over each end of each rafter; left out, there are none."}),
	}
}

func (d *draft) fallFields() keys.Group {
	f := &d.Fall
	return keys.Group{
		Choices: []keys.Choice{{Keys: []string{"drop", "angle", "slope"}, Need: true}},
		Fields: []keys.Field{
			{Key: "drop", Is: keys.Length(&d.drop, distance()), Doc: "As a height, between the two arrises named."},
			{Key: "angle", Is: keys.Angle(&d.angle, keys.Between(0, 60)), Also: []string{"degrees", "pitch"}, Doc: "Or as an angle from level."},
			{Key: "slope", Is: keys.Slope(&d.oneIn, keys.Between(0.6, 10_000)), Also: []string{"ratio"}, Doc: "Or as 1:n."},
			{Key: "from", Is: keys.Word(&f.From, WallFace, PlateInner, PlateOuter, BeamInner, RearOuter, RearInner), Else: "plate outer arris, or rear beam inner arris",
				Doc: "The upper of the plumb lines between which the line of the rafters' top edges is measured."},
			{Key: "to", Is: keys.Word(&f.To, PlateInner, PlateOuter, BeamInner, BeamOuter, RearInner), Def: string(BeamInner),
				Doc: "The lower one."},
		}}
}
