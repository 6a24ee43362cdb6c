package sheets

// coverSheets lays out the cover: rest are the sheets that follow it.
func (m *maker) coverSheets(rest []draft) []draft { return nil }
