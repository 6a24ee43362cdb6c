package frame

import "plumbcut/geom/frame/keys"

// roofFields are the keys of a roof over the battens.
func (d *draft) roofFields() keys.Group {
	r := &d.Roof
	return keys.Group{Opt: true, Fields: []keys.Field{
		{Key: "sheet", Is: keys.Text(&r.Sheet, titleText), Need: true, Also: []string{"name", "sheets"}, Doc: "Name of the sheet and its profile, as its maker has it."},
		{Key: "look", Is: keys.Either(&r.Clear, "clear", "solid"), Def: "solid", Doc: "Whether light comes through."},
		{Key: "thickness", Is: keys.Length(&r.Thickness, keys.Between(0.1, 100)), Else: "to be stated", Doc: "Of the material."},
		{Key: "profile", Is: keys.Length(&r.Profile, keys.Between(0.3, 200)), Need: true, Also: []string{"height", "depth"}, Doc: "Height of the profile over all; of a flat sheet, its thickness."},
		{Key: "width", Is: keys.Length(&r.Width, keys.Between(100, 6000)), Need: true, Doc: "Overall width of one sheet."},
		{Key: "lap", Is: keys.Length(&r.Lap, keys.Between(0, 2000)), Need: true, Also: []string{"side_lap"}, Doc: "How far a sheet lies over the one before it; 0 where they butt in a joint of their own."},
		{Key: "longest", Is: keys.Length(&r.Longest, keys.Between(500, far)), Else: "any length is to be had", Doc: "Longest sheet that is sold."},
		{Key: "end_lap", Is: keys.Length(&r.EndLap, keys.Between(10, 2000)), With: "longest", Doc: "How far an upper sheet lies over a lower one, over a batten, where one length does not reach."},
		{Key: "from", Is: keys.Word(&r.From, Left, Right), Def: string(Left), Doc: "The side at which the first sheet is laid; the last one is cut to width at the other."},
		{Key: "gap", Is: keys.Length(&r.Gap, keys.Between(0, 1000)), Def: "20 mm", Habit: true, Doc: "From the cladding to the sheets' upper ends, level."},
		{Key: "eave", Is: keys.Length(&r.Eave, keys.Between(0, 1000)), Def: "50 mm", Habit: true, Also: []string{"overhang"}, Doc: "How far the sheets run past the frame's outermost timber, level."},
		{Key: "verge_left", Is: keys.Length(&r.OverLeft, keys.Between(0, 1000)), Def: "0", Doc: "How far they run past the battens' left ends."},
		{Key: "verge_right", Is: keys.Length(&r.OverRight, keys.Between(0, 1000)), Def: "0", Doc: "How far they run past the battens' right ends."},
		{Key: "least_fall", Is: keys.Angle(&r.LeastFall, keys.Between(0.1, 60)), Else: "to be stated", Also: []string{"minimum_fall", "min_fall"}, Doc: "Least fall that the sheet's maker states."},
		{Key: "stated_by", Is: keys.Text(&r.StatedBy, titleText), Also: []string{"by"}, Doc: "Where the maker states it."},
		{Key: "gutter", Is: gutterFields(&r.Gutter), Doc: "The gutter in front of the frame; left out, there is none."},
		{Key: "downpipes", Is: keys.ListOf(&r.Downpipes, 0, keys.Zero, d.downpipeFields), Also: []string{"downpipe"}, Doc: "The pipes below it."},
		{Key: "flashing", Is: keys.Group{Opt: true, Fields: []keys.Field{
			{Key: "up", Is: keys.Length(&r.Flashing.Up, keys.Between(10, 1000)), Need: true, Doc: "How far it stands up the wall above the sheets."},
			{Key: "over", Is: keys.Length(&r.Flashing.Over, keys.Between(10, 2000)), Need: true, Doc: "How far it lies over the sheets, down the slope from the wall."},
		}}, Doc: "The flashing at the wall; left out, there is none."},
	}}
}

func gutterFields(g *Gutter) keys.Group {
	return keys.Group{Opt: true, Fields: []keys.Field{
		{Key: "section", Is: keys.Size(&g.Section.Depth, &g.Section.Width, keys.Between(20, 500)), Need: true, Also: []string{"size"}, Doc: "Stated size over all: depth x width out from the frame."},
		{Key: "under", Is: keys.Length(&g.Under, keys.Between(0, 500)), Def: "5 mm", Doc: "How far its rim lies below the sheets' lower ends."},
	}}
}

func (d *draft) downpipeFields(p *Downpipe) keys.Kind {
	return keys.Group{Fields: []keys.Field{
		{Key: "at", Is: keys.Length(&p.Along, anywhere()), Need: true, Doc: "Its middle, along."},
		{Key: "size", Is: keys.Length(&p.Size, keys.Between(20, 500)), Need: true, Also: []string{"diameter"}, Doc: "Stated diameter."},
		{Key: "to", Is: keys.Length(&p.To, anywhere()), Else: "the finished ground there", Doc: "Level of its foot."},
	}}
}
