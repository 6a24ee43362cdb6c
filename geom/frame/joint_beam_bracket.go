package frame

// bracketWay stands the beam on a post-cap bracket, whose plate lifts it off
// the post. The bracket is hardware and no solid, so the joint has no bearing
// face in the model.
type bracketWay struct{ oneBeam }

func (bracketWay) deep(*Job) float64 { return 0 }

func (bracketWay) outer(j *Job, k Carrier) float64 {
	if j.Posts.Meet.Bracket.Centred {
		return (k.Outer+k.Inner)/2 - j.Posts.Section.Depth/2
	}
	return k.Outer
}

func (bracketWay) top(c *checker, k Carrier) float64 {
	return k.Bottom - c.job.Posts.Meet.Bracket.Thickness
}

func (bracketWay) under() string { return "underside of beam" }

func (bracketWay) runsUp() bool { return false }

func (bracketWay) check(c *checker, k Carrier) { c.beamFitsPost(k) }

func (bracketWay) join(b *builder, k Carrier, post int) {
	p := b.members[post]
	at := k.Point(b.job.Posts.At[p.No-1].Along, (k.Outer+k.Inner)/2, k.Bottom)
	b.joints = append(b.joints, Joint{Kind: JointBeamBracket, A: k.Members[0], B: post, At: at})
}
