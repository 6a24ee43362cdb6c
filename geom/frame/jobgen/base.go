package jobgen

import (
	"fmt"
	"math/rand/v2"
)

// stand is what the posts stand on that is there already.
type stand struct {
	base  string // "slab" or "deck"; "" is a footing, as in a plain job
	mixed bool   // but for the first post
	shoe  string // the keys of the shoes
}

// settleBase decides, from random numbers of its own, whether posts stand on a
// slab or deck, so that jobs with footings stay what they were without it.
func (g *gen) settleBase(seed uint64) {
	own := gen{r: rand.New(rand.NewPCG(seed, stream+9)), inches: g.inches}
	if g.deckOut == 0 || g.skew != 0 || own.chance(0.5) {
		return
	}
	g.deckOut = max(g.deckOut, own.up(g.out+own.size(0, 600)))
	g.stand = stand{base: own.pick("slab", "deck"), mixed: own.chance(0.3)}
	g.stand.shoe = fmt.Sprintf("{stand: %s", own.s(own.size(40, 120)))
	if own.chance(0.6) {
		g.stand.shoe += fmt.Sprintf(", fixings: %d, diameter: %s, length: %s", 1+own.r.IntN(4), own.s(own.size(8, 16)), own.s(own.size(80, 150)))
	}
	if own.chance(0.5) {
		g.stand.shoe += fmt.Sprintf(", from_edge: %s, stated: as the designer says", own.s(own.size(50, 300)))
	}
	g.stand.shoe += "}"
}
