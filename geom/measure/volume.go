package measure

// Volumes in cubic millimetres, exact by definition.
const (
	Millilitre  = 1e3
	Litre       = 1e6
	cubicMetre  = 1e9
	cubicFoot   = (Inch * inchesPerFoot) * (Inch * inchesPerFoot) * (Inch * inchesPerFoot)
	squareMetre = 1e6
	squareFoot  = (Inch * inchesPerFoot) * (Inch * inchesPerFoot)
)

// Volume writes a volume given in cubic millimetres in cubic metres to two
// decimals, e.g. "0.12 m³", or in cubic feet to one, "4.2 ft³".
func (f Format) Volume(mm3 float64) string {
	if f.Units == FeetInches {
		return signedDecimal(mm3/cubicFoot, 0.1) + " ft³"
	}
	return signedDecimal(mm3/cubicMetre, 0.01) + " m³"
}

// The last places of FineVolume, in its units.
const (
	fineMetre = 0.001
	fineFoot  = 0.01
)

// FineVolume is Volume to three decimals of a cubic metre, or two of a cubic
// foot, for what is bought by the bag.
func (f Format) FineVolume(mm3 float64) string {
	if f.Units == FeetInches {
		return signedDecimal(mm3/cubicFoot, fineFoot) + " ft³"
	}
	return signedDecimal(mm3/cubicMetre, fineMetre) + " m³"
}

// RoundFineVolume is the volume that FineVolume prints, mm³.
func (f Format) RoundFineVolume(mm3 float64) float64 {
	unit := fineMetre * cubicMetre
	if f.Units == FeetInches {
		unit = fineFoot * cubicFoot
	}
	return roundAway(mm3/unit) * unit
}

// SmallVolume writes a volume given in cubic millimetres in millilitres, to one
// decimal below a tenth of a litre, e.g. "13.2 ml". Adhesives are sold so
// everywhere.
func (f Format) SmallVolume(mm3 float64) string {
	step := 1.0
	if mm3 < Litre/10 {
		step = 0.1
	}
	return signedDecimal(mm3/Millilitre, step) + " ml"
}

// FineArea writes an area given in square millimetres in square metres to two
// decimals, e.g. "0.18 m²", or in square feet to one, "1.9 ft²".
func (f Format) FineArea(mm2 float64) string {
	if f.Units == FeetInches {
		return signedDecimal(mm2/squareFoot, 0.1) + " ft²"
	}
	return signedDecimal(mm2/squareMetre, 0.01) + " m²"
}

// Run writes a length given in millimetres as timber is sold, in metres to one
// decimal, e.g. "37.4 m", or in feet, "122.8 ft".
func (f Format) Run(mm float64) string {
	if f.Units == FeetInches {
		return signedDecimal(mm/(Inch*inchesPerFoot), 0.1) + " ft"
	}
	return signedDecimal(mm/1000, 0.1) + " m"
}
