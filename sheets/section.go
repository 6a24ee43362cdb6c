package sheets

// sectionSheets lays out the cross-section.
func (m *maker) sectionSheets() []draft { return nil }
