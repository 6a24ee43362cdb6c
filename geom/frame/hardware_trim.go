package frame

// endScrewed is the screws of a small timber at one joint. They are driven
// through it where it lies on the other, else through the other into its end or
// aslant: the spots say where it is met.
func (f *Frame) endScrewed(j Joint, s EndScrews, use string) Hardware {
	return Hardware{
		Kind: TimberScrew, Size: HardwareSize{Diameter: s.Diameter, Length: s.Length}, Use: use, Quantity: s.Each,
		Spots: []Spot{{Member: j.A, Face: FaceOuter, At: f.along(j.A, j)}, {Member: j.B, Face: f.Members[j.B].facing(j.Bearing.N), At: f.along(j.B, j)}},
	}
}
