package sheets

// setoutSheets lays out the post set-out plan.
func (m *maker) setoutSheets() []draft { return nil }
