package measure

// Volume writes a volume given in cubic millimetres in cubic metres to two
// decimals, e.g. "0.12 m³", or in cubic feet to one, "4.2 ft³".
func (f Format) Volume(mm3 float64) string {
	if f.Units == FeetInches {
		foot := Inch * inchesPerFoot
		return signedDecimal(mm3/(foot*foot*foot), 0.1) + " ft³"
	}
	const cubicMetre = 1e9
	return signedDecimal(mm3/cubicMetre, 0.01) + " m³"
}
