package frame

// deckBase stands a post in a shoe on a deck, over a joist or bearer with
// blocking beside it. What the deck itself stands on has to carry the frame.
type deckBase struct{}

func (deckBase) dug() bool { return false }

func (deckBase) foot(j *Job, p Post) float64 { return j.Levels.Deck + p.Shoe.Stand }

func (deckBase) check(c *checker, i int) {
	c.onFloor(i, "deck")
	for _, q := range c.job.Posts.At[:i] {
		if q.Base == OnDeck {
			return // it is said
		}
	}
	c.warnf(RuleBase, c.postPath(i), "a deck is built for people, not to carry and hold down a frame: designer to confirm its joists, bearers, piles and their footings under the posts")
}

func (deckBase) join(b *builder, post, _ int, _ Post) { b.stand(post, JointPostDeck) }
