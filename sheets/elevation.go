package sheets

// elevationSheets lays out the front and both end elevations.
func (m *maker) elevationSheets() []draft { return nil }
