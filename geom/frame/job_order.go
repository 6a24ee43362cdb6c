package frame

// Stock is the timber that can be bought and what the saw takes of it.
type Stock struct {
	Lengths  []StockLength  // of every section that Sections does not name; ascending
	Sections []StockSection // sections that are sold otherwise
	Kerf     float64        // width of a saw cut
	EndTrim  float64        // cut off each end of a stick
	Defects  float64        // share of each stick set aside for knots and splits, 0 to 1
	Extra    Extra
}

// StockLength is a length of stick that is sold.
type StockLength struct {
	Length float64
	Price  float64 // of one stick
	Priced bool    // whether a price is stated
}

// StockSection is a section that is sold in lengths of its own.
type StockSection struct {
	Section Section
	Lengths []StockLength // ascending
}

// Extra is how much longer sticks are cut than they end up, because their last
// cut waits until the site is measured.
type Extra struct{ Plate, Beam, Post, Rafter, Batten, Lath float64 }

// of is the extra length of a kind.
func (e Extra) of(k Kind) float64 {
	switch k {
	case KindPlate:
		return e.Plate
	case KindBeam:
		return e.Beam
	case KindPost:
		return e.Post
	case KindRafter:
		return e.Rafter
	case KindBatten:
		return e.Batten
	case KindLath:
		return e.Lath
	}
	return 0
}

// LengthsOf are the lengths in which a section is sold, whichever of its sides
// is called its depth.
func (s Stock) LengthsOf(section Section) []StockLength {
	for _, own := range s.Sections {
		if own.Section.same(section) {
			return own.Lengths
		}
	}
	return s.Lengths
}

// same reports whether two sections are the same stick, turned or not.
func (s Section) same(t Section) bool {
	near := func(a, b float64) bool { return quantised(a) == quantised(b) }
	return near(s.Depth, t.Depth) && near(s.Width, t.Width) || near(s.Depth, t.Width) && near(s.Width, t.Depth)
}

// Strap is the metal strap that ties a rafter down at each of its ends. It lies
// on the rafter's top edge with half its length, and with the other half on the
// timber that holds the rafter.
type Strap struct {
	Width, Thickness, Length float64 // Width 0: there are no straps
	Nails                    int     // in each strap, both halves together
}

// BattenScrews hold a batten down where it crosses a rafter.
type BattenScrews struct {
	Each             int     // at each crossing
	Diameter, Length float64 // 0: to be stated
}

// Supplies are what is bought by the bag, the tin and the box.
type Supplies struct {
	Bag            string  // name of a bag of concrete
	BagYield       float64 // wet concrete from one, mm³
	ConcreteWaste  float64 // share added for what is spilt and for holes that are dug too wide
	Cartridge      float64 // adhesive in one, mm³
	AdhesiveWaste  float64 // share added for what is wasted
	Spread, Coats  float64 // primer: square metres that a litre covers once, and how often
	HardwareSpares float64 // share of loose fixings bought beyond those counted
}
