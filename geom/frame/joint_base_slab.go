package frame

// slabBase stands a post in a shoe bolted down to a slab that is there
// already: no footing is dug.
type slabBase struct{}

func (slabBase) dug() bool { return false }

func (slabBase) foot(j *Job, p Post) float64 { return j.Levels.Deck + p.Shoe.Stand }

func (slabBase) check(c *checker, i int) { c.onFloor(i, "slab") }

func (slabBase) join(b *builder, post, _ int, _ Post) { b.stand(post, JointPostSlab) }
