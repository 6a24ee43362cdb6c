// Package frame turns a job file into an exact model of a timber lean-to: Read
// gives a Job (what the file says, checked, with every default filled in) and
// Build makes of it a Frame (members, joints, levels, warnings). Everything
// that is ever drawn or listed is read off the Frame.
//
// The form built here: a wall plate on packers, a level beam on posts, rafters
// housed into both, battens across the rafters.
//
//	   house │▓ plate
//	         │▓▁▁           battens
//	         │▓   ▔▔▔▔▁▁▁▁ ▪ rafters    beam
//	         │             ▔▔▔▔▁▁▁▁▁▁▓▓
//	         │                       ▓▓▏post
//	─────────┴───────────────────────┤ ├──── z = ground
//	        y=0                   y=−Out
//
// # Axes
//
// The world is right-handed, seen standing outside and facing the house: x to
// the right along the wall, y into the house from the outer face of the
// cladding, z up from the job's datum. Every member has axes of its own,
// right-handed too, whose origin is a corner of its prism:
//
//	kind     datum end U=0      U runs             V=0 to V=Width   W=0 to W=Depth
//	plate    left               right              outer to house   bottom to top
//	beam     left               right              outer to house   bottom to top
//	post     bottom             up                 left to right    outer to house
//	brace    post end           up to the beam     left to right    bottom to top
//	rafter   house end          out, down the fall left to right    bottom to top
//	batten   left               right              outer to house   bottom to top
//	lath     house end          out, down the fall left to right    bottom to top
//	slat     left               right              outer to house   bottom to top
//	cleat    house end          out, along the slat left to right   bottom to top
//	block    left               right              outer to house   bottom to top
//	fascia   left               right              outer to house   bottom to top
//	valance  left               right              outer to house   bottom to top
//	packer   bottom             up                 left to right    outer to house
//	footing  bottom of the hole up                 left to right    outer to house
//
// Left and right are as seen from outside facing the wall that the member
// belongs to; a packer between a post and a return is seen facing the return.
// A brace is seen from its beam end, looking down it; its V is level and its W
// leans up towards the corner that it stands across, so left and right braces
// are one stick. Battens and laths lie on the slope, so their V and W are turned
// by the fall; those of slats by their own angle too.
//
// # What is left out
//
// Strength: no size is judged. Hardware: stirrups, straps and screws are not
// solids; only the holes that they need are.
package frame
