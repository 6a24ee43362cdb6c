package frame

// The kinds of what a roof is made of, as the lists name them.
const (
	SheetOfRoof    HardwareKind = RoofSheet
	GutterLength   HardwareKind = RoofGutter
	DownpipeLength HardwareKind = RoofDownpipe
	FlashingLength HardwareKind = RoofFlashing
)

// UseRoof is the use of all of it.
const UseRoof = "roof"

// roofKinds lists them in the order in which lists give them. They are counted
// out and bought without spares.
func roofKinds() []HardwareKind {
	return []HardwareKind{SheetOfRoof, FlashingLength, GutterLength, DownpipeLength}
}

// roofed is what the roof is made of. Its screws, brackets and closures are as
// the makers state, and not counted.
func (f *Frame) roofed() []Hardware {
	r, j := f.Roof, f.Job.Roof
	if len(r.Parts) == 0 {
		return nil
	}
	var out []Hardware
	for _, c := range r.Courses {
		out = append(out, Hardware{
			Kind: SheetOfRoof, Size: HardwareSize{Width: j.Width, Thickness: j.Thickness, Length: c.Length()}, Use: UseRoof, Quantity: r.Rows(),
		})
	}
	long := r.Right - r.Left
	if j.Flashing.Up > 0 {
		out = append(out, Hardware{Kind: FlashingLength, Size: HardwareSize{Width: j.Flashing.Up + j.Flashing.Over, Length: long}, Use: UseRoof, Quantity: 1})
	}
	if g := j.Gutter.Section; g.Width > 0 {
		out = append(out, Hardware{Kind: GutterLength, Size: HardwareSize{Width: g.Width, Thickness: g.Depth, Length: long}, Use: UseRoof, Quantity: 1})
		for _, p := range j.Downpipes {
			out = append(out, Hardware{Kind: DownpipeLength, Size: HardwareSize{Diameter: p.Size, Length: r.Rim - g.Depth - p.To}, Use: UseRoof, Quantity: 1})
		}
	}
	return out
}
