package frame

// holding is the hardware that holds a rafter on its carrier.
func (f *Frame) holding(j Joint) []Hardware {
	k, _ := f.Setout.CarrierOf(j.B)
	use := UseRafter + k.Name
	switch j.Hold {
	case Over:
		return f.strappedOver(j, use)
	case Between:
		return f.hung(j, use)
	}
	return f.strapped(j, use)
}

// strappedOver is the strap that ties a rafter to the timber that it lies over:
// it is bent over the rafter's top edge there.
func (f *Frame) strappedOver(j Joint, use string) []Hardware {
	strap := f.Job.Rafters.Strap
	if strap.Width == 0 {
		return nil
	}
	spots := []Spot{
		{Member: j.A, Face: FaceTop, At: f.along(j.A, j), Span: strap.Width},
		{Member: j.B, Face: FaceTop, At: f.along(j.B, j), Span: f.Members[j.A].Section.Width},
	}
	return []Hardware{
		{StrapTie, HardwareSize{Width: strap.Width, Thickness: strap.Thickness, Length: strap.Length}, use, 1, spots},
		{StrapNail, HardwareSize{}, use, strap.Nails, spots},
	}
}

// hung is the hanger of one end of a rafter: as wide as the rafter, and as high
// as its end at most. Its nails are its maker's to state.
func (f *Frame) hung(j Joint, use string) []Hardware {
	r := f.Members[j.A]
	k, _ := f.Setout.CarrierOf(j.B)
	at := r.EndCut(k.End).At
	face := FaceOuter
	if k.End == FaceEnd {
		face = FaceHouse
	}
	return []Hardware{{
		Kind: Hanger, Size: HardwareSize{Width: r.Section.Width, Length: f.Setout.plumb(r.Section.Depth)}, Use: use, Quantity: 1,
		Spots: []Spot{{Member: j.A, Face: FaceBottom, At: at}, {Member: j.B, Face: face, At: f.along(j.B, j), Span: r.Section.Width}},
	}}
}
