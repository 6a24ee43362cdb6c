package frame

import "plumbcut/geom/frame/keys"

// meetFields are the keys of how the beam meets the posts.
func (d *draft) meetFields() []keys.Field {
	m := &d.Posts.Meet
	return []keys.Field{
		{Key: "beam", Is: keys.Word(&m.Meeting, Meetings()...), Def: string(OnTop), Also: []string{"beam_joint", "seat", "joint"},
			Doc: "How the beam meets them: on top of them; checked out, seated in a notch of each post and bolted; face-fixed, bolted against their outer faces; on bracket, on a post cap; twin, a beam bolted against either face; twin checked out, both seated in notches."},
		{Key: "check_out", Is: keys.Length(&m.CheckOut, keys.Between(5, 500)), Also: []string{"notch", "rebate"},
			Else: "as deep as the beam is wide, or half of the post if that is less; of twin beams half of either",
			Doc:  "Depth of the notch in each post that seats a beam."},
		{Key: "clearance", Is: keys.Length(&m.Clearance, keys.Between(0, 10)), Def: "1 mm", Habit: true,
			Doc: "How much higher than the beam a notch is where the posts run on above it."},
		{Key: "top", Is: keys.Length(&m.Top, keys.Between(-1000, 2000)), Also: []string{"above", "height"},
			Else: "as high as the beam, or lower where a rafter or battens pass over a post behind it",
			Doc:  "Height of the posts' tops above the top of the beam that they run up beside; negative below it."},
		{Key: "bolts", Is: d.boltFields(), Also: []string{"bolt"}, Doc: "The bolts through beam and post."},
		{Key: "bracket", Is: d.bracketFields(), Also: []string{"post_cap", "cap"}, Doc: "The post-cap bracket that the beam stands on."},
	}
}

func (d *draft) boltFields() keys.Group {
	x := &d.Posts.Meet.Bolts
	return keys.Group{Fields: []keys.Field{
		{Key: "diameter", Is: keys.Length(&x.Diameter, keys.Between(4, 50)), Def: "12 mm", Habit: true, Doc: "Their diameter."},
		{Key: "hole", Is: keys.Length(&x.Hole, keys.Between(4, 60)), Else: "the bolt's diameter and 1 mm", Doc: "Hole for each through beam and post."},
		{Key: "length", Is: keys.Length(&x.Length, keys.Between(20, 2000)), Else: "what they hold together and three diameters, rounded up to 10 mm (common practice, no source: confirm)",
			Doc: "Their length under the head."},
		{Key: "number", Is: keys.Count(&x.Number, 1, 12), Def: "2", Habit: true, Doc: "How many at each post."},
		{Key: "pattern", Is: keys.Word(&x.Pattern, BoltsInLine, BoltsStaggered, BoltsInPairs), Def: string(BoltsInLine),
			Doc: "In line up the middle of the post, staggered left and right of it, or in pairs; off the middle they stand at the quarters of its width."},
		{Key: "edge", Is: keys.Length(&x.Edge, keys.Between(5, 500)), Else: "four diameters (from memory: confirm)", Also: []string{"edge_distance"},
			Doc: "Distance of the lowest from the beam's lower edge, and of the highest from its upper edge or from the post's top if that is lower."},
	}}
}

func (d *draft) bracketFields() keys.Group {
	b := &d.Posts.Meet.Bracket
	return keys.Group{Fields: []keys.Field{
		{Key: "name", Is: keys.Text(&b.Name, titleText), Doc: "What it is called in the lists, such as its maker's number."},
		{Key: "thickness", Is: keys.Length(&b.Thickness, keys.Between(0.5, 50)), Def: "5 mm", Habit: true, Doc: "Thickness of its plate, which lifts the beam off the post."},
		{Key: "line", Is: keys.Either(&b.Centred, "centred", "flush"), Def: "flush", Doc: "Whether the outer faces of beam and post are flush, or the beam stands over the middle of the post."},
	}}
}
