package sheets

import "plumbcut/geom"

// detail is one joint to be drawn at a larger scale.
type detail struct {
	at geom.Vec // where marks on other sheets point
}

// findDetails lists the distinct joints of the frame.
func (m *maker) findDetails() []detail { return nil }

// detailSheets lays out the joint details.
func (m *maker) detailSheets() []draft { return nil }
