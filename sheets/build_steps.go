package sheets

import (
	"plumbcut/geom/frame"
)

// buildSteps is the order of work: measure, plate, string, posts, beam, pattern
// rafter, rest. It is common practice, with no source.
func buildSteps() []buildStep {
	return []buildStep{
		{title: "Measure the house and the timber", when: (*maker).againstHouse, view: wallStep(), says: (*maker).sayMeasure, hold: (*maker).holdMeasure, care: careDrilling, table: (*maker).siteTable},
		{title: "Mark and cut the wall plate", when: (*maker).againstHouse, adds: kinds(frame.KindPlate), view: plateStep(), says: (*maker).sayPlate, hold: (*maker).holdPlate, care: careTreated},
		{title: "Fix the wall plate", when: (*maker).againstHouse, adds: (*maker).onWall, view: pictorialStep(false), says: (*maker).sayFixPlate, hold: (*maker).holdFixPlate, care: careOfWall},
		{title: "Agree the place, measure the timber", when: (*maker).freestanding, view: setoutStep(), says: (*maker).sayPlace, hold: (*maker).holdPlace, care: (*maker).careServices, table: (*maker).siteTable},
		{title: "Set out the posts", view: setoutStep(), says: (*maker).saySetOut, hold: (*maker).holdTapes, care: (*maker).careServices},
		{title: "Dig the holes", when: (*maker).dug, adds: kinds(frame.KindFooting), view: pictorialStep(true), says: (*maker).sayDig, hold: holdHoles, care: careHoles},
		{title: "Stand the posts", adds: (*maker).postsWithPackers, view: pictorialStep(true), says: (*maker).sayPosts, hold: holdPosts, care: careOfPosts},
		{title: "Mark and cut the post tops", view: topsStep(), says: (*maker).sayTops, hold: (*maker).holdTops, care: carePlatform},
		{title: "Set the beam", when: (*maker).againstHouse, adds: kinds(frame.KindBeam), view: pictorialStep(false), says: (*maker).sayBeam, hold: holdBeam, care: careLifting},
		{title: "Set the two beams", when: (*maker).freestanding, adds: kinds(frame.KindBeam), view: pictorialStep(false), says: (*maker).sayBeams, hold: holdBeams, care: careLifting},
		{title: "Square it, cut the pattern rafter", adds: (*maker).isPattern, view: patternStep(), says: (*maker).sayPattern, hold: holdPattern, care: carePattern, table: (*maker).clearTable},
		{title: "Fit the rafters", adds: kinds(frame.KindRafter), view: pictorialStep(false), says: (*maker).sayRafters, hold: holdRafters, care: careFalls},
		{title: "Fit the blocks", when: has(frame.KindBlock), adds: kinds(frame.KindBlock), view: pictorialStep(false), says: (*maker).sayBlocks, hold: holdBlocks, care: careFalls},
		{title: "Fix the diagonal straps", when: (*maker).hasRoofStraps, view: strapStep(), says: (*maker).sayRoofStraps, hold: holdRoofStraps, care: careRoofStraps},
		{title: "Fit the knee braces", when: (*maker).hasBraces, adds: kinds(frame.KindBrace), view: pictorialStep(false), says: (*maker).sayBraces, hold: holdBraces, care: careBraces},
		{title: "Fix the battens", when: (*maker).hasBattens, adds: kinds(frame.KindBatten), view: pictorialStep(false), says: (*maker).sayBattens, hold: (*maker).holdBattens, care: careBattens},
		{title: "Fix the laths", when: (*maker).hasLaths, adds: kinds(frame.KindLath), view: pictorialStep(false), says: (*maker).lathWords, hold: (*maker).holdLaths, care: careBattens},
		{title: "Fix the slats", when: (*maker).hasSlats, adds: (*maker).slatsAndCleats, view: pictorialStep(false), says: (*maker).slatSaid, hold: (*maker).slatHold, care: careBattens},
		{title: "Fix the fascia", when: has(frame.KindFascia), adds: kinds(frame.KindFascia), view: pictorialStep(false), says: (*maker).sayFascia, hold: holdFascia, care: careTrim},
		{title: "Lay the roof", when: (*maker).hasRoof, view: roofStep(), says: (*maker).roofSaid, hold: holdRoof, care: careRoof},
		{title: "Fix the valance", when: has(frame.KindValance), adds: kinds(frame.KindValance), view: pictorialStep(false), says: (*maker).sayValance, hold: holdValance, care: careTrim},
		{title: "Finish and check", view: checkStep(), says: (*maker).sayCheck, hold: holdCheck, care: careYearly, table: (*maker).checkTable},
	}
}

// kinds is a step that puts up all members of a kind.
func kinds(k frame.Kind) func(*maker, frame.Member) bool {
	return func(_ *maker, b frame.Member) bool { return b.Kind == k }
}

// againstHouse and freestanding report what the frame is.
func (m *maker) againstHouse() bool { return !m.job.Freestanding() }
func (m *maker) freestanding() bool { return m.job.Freestanding() }

// onWall reports whether a member is the plate or one of its packers.
func (m *maker) onWall(b frame.Member) bool {
	return b.Kind == frame.KindPlate || m.packs(b, frame.JointPlateWall)
}

// postsWithPackers reports whether a member is a post or a packer behind one.
func (m *maker) postsWithPackers(b frame.Member) bool {
	return b.Kind == frame.KindPost || m.packs(b, frame.JointPostWall)
}

// packs reports whether a member is a packer in a joint of the kind.
func (m *maker) packs(b frame.Member, kind frame.JointKind) bool {
	if b.Kind != frame.KindPacker {
		return false
	}
	for _, j := range m.frame.Joints {
		if j.Kind == kind && j.B >= 0 {
			if o := m.frame.Members[j.B]; o.Kind == b.Kind && o.No == b.No {
				return true
			}
		}
	}
	return false
}

// isPattern reports whether a member is the rafter that is cut first.
func (m *maker) isPattern(b frame.Member) bool { return b.Kind == frame.KindRafter && b.No == 1 }

func (m *maker) hasBattens() bool { return len(m.frame.Of(frame.KindBatten)) > 0 }

// slatsAndCleats reports whether a member is a slat or what it lies on.
func (m *maker) slatsAndCleats(b frame.Member) bool {
	return b.Kind == frame.KindSlat || b.Kind == frame.KindCleat
}
