package frame

// stirrupBase stands a post on a stirrup over its concrete. The stirrup is
// hardware and no solid, so the joint has no bearing face.
type stirrupBase struct{}

func (stirrupBase) dug() bool { return true }

func (stirrupBase) foot(_ *Job, p Post) float64 { return p.Ground + p.Footing.Collar + p.Footing.Stand }

func (stirrupBase) check(c *checker, i int) {
	if f := c.job.Posts.At[i].Footing; f.Stand < standLeast {
		c.warnf(RuleStand, c.postPath(i), "post %d ends only %s above its footing; %s keeps its end grain dry", i+1, c.figure(f.Stand), c.figure(standLeast))
	}
}

func (stirrupBase) join(b *builder, post, footing int, spec Post) {
	p := &b.members[post]
	b.weather(post, footing, spec)
	b.joints = append(b.joints, Joint{Kind: JointPostStirrup, A: post, B: footing, At: p.Place.Point(p.middle())})
}
