package frame

import "slices"

// base is what the model has to know of one way in which a post stands. Each
// way is one file, joint_base_*.go, and one line in Base.of; nothing else of the
// model asks what a post stands on.
type base interface {
	// dug reports whether a hole is dug for it and filled with concrete.
	dug() bool
	// foot is the level of the post's end.
	foot(j *Job, p Post) float64
	// check finds what cannot be built and what somebody has to confirm.
	check(c *checker, i int)
	// join sets the post; the footing is meant for none that is not dug.
	join(b *builder, post, footing int, p Post)
}

// of is the base's own way. The zero value is set in concrete.
func (k Base) of() base {
	switch k {
	case OnStirrup:
		return stirrupBase{}
	case OnSlab:
		return slabBase{}
	case OnDeck:
		return deckBase{}
	}
	return concreteBase{}
}

// Dug reports whether a hole is dug for a post; else it stands on what is there
// already.
func (p Post) Dug() bool { return p.Base.of().dug() }

// Floor is the level of what a post rises from: the ground, or the slab or deck
// that it stands on.
func (j *Job) Floor(p Post) float64 {
	if p.Dug() {
		return p.Ground
	}
	return j.Levels.Deck
}

// FloorName is what the job's deck or paving is called: a slab where posts stand
// on it as on one.
func (j *Job) FloorName() string {
	if slices.ContainsFunc(j.Posts.At, func(p Post) bool { return p.Base == OnSlab }) {
		return string(OnSlab)
	}
	return string(OnDeck)
}

// onFloor checks a post that stands on what is there already.
func (c *checker) onFloor(i int, what string) {
	j, p := c.job, c.job.Posts.At[i]
	out := -c.set.Under(i).PostOuter
	switch {
	case j.Levels.DeckOut == 0:
		c.errorf(RuleBase, c.postPath(i), "post %d stands on a %s, but levels gives no deck or paving; add deck: {level: 0, out: 3400}, or what it is", i+1, what)
		return
	case j.Levels.DeckOut < out-slack:
		c.errorf(RuleBase, c.postPath(i), "post %d stands on a %s that ends %s out, and its outer face is at %s; bring it in, or give it a footing", i+1, what, c.mm(j.Levels.DeckOut), c.mm(out))
		return
	}
	if edge := j.Levels.DeckOut - out; p.Shoe.FromEdge > 0 && edge < p.Shoe.FromEdge-slack {
		c.warnf(RuleBase, c.postPath(i), "post %d is %s from the edge of the %s, less than the %s stated for its shoe: designer to confirm", i+1, c.figure(edge), what, c.figure(p.Shoe.FromEdge))
	}
	for k, q := range j.Posts.At[:i] {
		if !q.Dug() && q.Base != p.Base {
			c.errorf(RuleBase, c.postPath(i), "post %d stands on a %s and post %d on a %s, and levels gives one for both; let them stand on the same", i+1, what, k+1, q.Base)
			return
		}
	}
	if p.Shoe.Stand < standLeast {
		c.warnf(RuleStand, c.postPath(i), "post %d ends only %s above the %s; %s keeps its end grain dry", i+1, c.figure(p.Shoe.Stand), what, c.figure(standLeast))
	}
}

// stand records the joint of a post with what is there already. The shoe is
// hardware and no solid, so the joint has no bearing face.
func (b *builder) stand(post int, kind JointKind) {
	p := &b.members[post]
	at := p.Place.Point(p.middle())
	b.joints = append(b.joints, Joint{Kind: kind, A: post, B: theHouse, At: at})
}
