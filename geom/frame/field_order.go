package frame

import "plumbcut/geom/frame/keys"

func (d *draft) stockFields() keys.Group {
	s := &d.Stock
	extra := func(key string, to *float64, def string) keys.Field {
		return keys.Field{Key: key, Is: keys.Length(to, keys.Between(0, 1000)), Def: def, Habit: def != "0",
			Doc: "How much longer it is cut at first."}
	}
	return keys.Group{Fields: []keys.Field{
		{Key: "lengths", Is: keys.ListOf(&s.Lengths, 1, keys.Zero, stockLengthFields), Also: []string{"length", "sticks"},
			Else: metricLengths + "; or " + imperialLengths + " with feet and inches (common practice, no source: confirm)",
			Doc:  "The lengths in which timber is sold, each with the price of a stick if it is known. With a price for each, the list buys what costs least, else what is least in length."},
		{Key: "sections", Is: keys.ListOf(&s.Sections, 1, keys.Zero, stockSectionFields),
			Doc: "Sections that are sold in lengths of their own."},
		{Key: "kerf", Is: keys.Length(&s.Kerf, keys.Between(0, 50)), Def: "3 mm", Habit: true, Doc: "Width of a saw cut."},
		{Key: "end_trim", Is: keys.Length(&s.EndTrim, keys.Between(0, 500)), Def: "10 mm", Habit: true, Also: []string{"trim"},
			Doc: "Cut off each end of a stick to make it square and sound."},
		{Key: "defects", Is: keys.Share(&s.Defects, keys.Between(0, 0.5)), Def: "0%",
			Doc: "Share of each stick that is set aside for knots and splits."},
		{Key: "extra", Is: keys.Group{Fields: []keys.Field{
			extra("plate", &s.Extra.Plate, "0"), extra("beam", &s.Extra.Beam, "0"), extra("posts", &s.Extra.Post, "150 mm"),
			extra("rafters", &s.Extra.Rafter, "50 mm"), extra("battens", &s.Extra.Batten, "0"), extra("laths", &s.Extra.Lath, "0"),
		}}, Doc: "Length left on for cuts that wait until the site is measured."},
	}}
}

func stockLengthFields(l *StockLength) keys.Kind {
	return keys.Group{Short: "length", Fields: []keys.Field{
		{Key: "length", Is: keys.Length(&l.Length, keys.Between(300, far)), Need: true, Doc: "Length of the stick."},
		{Key: "price", Is: keys.Number(&l.Price, keys.Between(0, 1_000_000)), Doc: "Price of one, in any coin, to two decimals."},
	}}
}

func stockSectionFields(s *StockSection) keys.Kind {
	return keys.Group{Fields: []keys.Field{
		{Key: "section", Is: keys.Size(&s.Section.Depth, &s.Section.Width, keys.Between(5, 1200)), Need: true, Doc: "As the member that is cut from it says; which side comes first does not matter."},
		{Key: "lengths", Is: keys.ListOf(&s.Lengths, 1, keys.Zero, stockLengthFields), Need: true, Doc: "Its lengths."},
	}}
}

func (d *draft) concreteFields() keys.Group {
	s := &d.Supplies
	return keys.Group{Fields: []keys.Field{
		{Key: "bag", Is: keys.Text(&s.Bag, titleText), Doc: "What a bag of dry mix is called in the list, such as: 20 kg."},
		{Key: "bag_yield", Is: keys.Volume(&s.BagYield, keys.Between(0.5, 2000)), Def: "9 litres", Habit: true, Also: []string{"yield"},
			Doc: "Wet concrete from one bag, as printed on it."},
		{Key: "waste", Is: keys.Share(&s.ConcreteWaste, keys.Between(0, 1)), Def: "10%", Habit: true,
			Doc: "Added for what is spilt and for holes that come out wider than drawn."},
	}}
}

func (d *draft) adhesiveFields() keys.Group {
	s := &d.Supplies
	return keys.Group{Fields: []keys.Field{
		{Key: "cartridge", Is: keys.Volume(&s.Cartridge, keys.Between(0.01, 20)), Def: "300 ml", Habit: true, Doc: "What one cartridge holds."},
		{Key: "waste", Is: keys.Share(&s.AdhesiveWaste, keys.Between(0, 1)), Def: "20%", Habit: true, Doc: "Added for what stays in nozzles and runs out of holes."},
	}}
}

func (d *draft) primerFields() keys.Group {
	s := &d.Supplies
	return keys.Group{Fields: []keys.Field{
		{Key: "spread", Is: keys.Number(&s.Spread, keys.Between(0.1, 100)), Def: "8", Habit: true, Also: []string{"coverage"},
			Doc: "Square metres that a litre covers once."},
		{Key: "coats", Is: keys.Number(&s.Coats, keys.Between(1, 10)), Def: "2", Habit: true, Doc: "How often a cut face is coated."},
	}}
}

func (d *draft) hardwareFields() keys.Group {
	return keys.Group{Fields: []keys.Field{
		{Key: "spare", Is: keys.Share(&d.Supplies.HardwareSpares, keys.Between(0, 1)), Def: "10%", Habit: true, Also: []string{"waste", "allowance"},
			Doc: "Share of screws, nails, washers, nuts and straps bought beyond those counted."},
	}}
}

func (d *draft) strapFields() keys.Group {
	s := &d.Rafters.Strap
	return keys.Group{Opt: true, Fields: []keys.Field{
		{Key: "width", Is: keys.Length(&s.Width, keys.Between(5, 300)), Need: true, Doc: "Its width."},
		{Key: "thickness", Is: keys.Length(&s.Thickness, keys.Between(0.1, 10)), Else: "to be stated", Doc: "Its thickness."},
		{Key: "length", Is: keys.Length(&s.Length, keys.Between(40, 2000)), Need: true, Doc: "Its length, half of it on the rafter."},
		{Key: "nails", Is: keys.Count(&s.Nails, 1, 100), Def: "6", Habit: true, Doc: "Nails in each strap, half of them in the rafter."},
	}}
}
