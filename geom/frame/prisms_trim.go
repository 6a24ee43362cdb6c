package frame

import "plumbcut/geom"

// blockPrisms makes the blocks, row by row from the house outwards.
func (b *builder) blockPrisms() {
	j, s := b.job.Blocking, b.set
	b.blocks = len(b.members)
	half := b.job.Rafters.Section.Width / 2
	for _, r := range s.BlockRows {
		for i := 1; i < len(s.Rafters); i++ {
			place := s.blockAxes(b.job, r)
			place.O.X = s.Rafters[i-1] + half
			b.add(Member{
				Kind: KindBlock, No: len(b.members) - b.blocks + 1, Section: j.Section, Timber: j.Timber,
				Length: s.Rafters[i] - s.Rafters[i-1] - 2*half, Place: place,
			})
		}
	}
}

// blockAxes is how the blocks of a row stand, at x = 0.
func (s Setout) blockAxes(j *Job, row float64) geom.Axes {
	size := j.Blocking.Section
	slope := s.onSlope()
	if j.Blocking.Set == BlockPlumb {
		y := slope.Point(geom.V(row, 0, 0)).Y - size.Width/2
		a := geom.World()
		a.O = geom.V(0, y, s.RafterTop(y)-size.Depth)
		return a
	}
	return geom.Axes{O: slope.Point(geom.V(row+size.Width/2, 0, -size.Depth)), U: geom.V(1, 0, 0), V: slope.U.Neg(), W: slope.W}
}

// fasciaPrism makes the fascia: plumb, but square to rafters that end square.
func (b *builder) fasciaPrism() {
	j, s := b.job.Fascia, b.set
	b.fascia = len(b.members)
	if j.Section.Depth == 0 {
		return
	}
	half := b.job.Rafters.Section.Width / 2
	from, to := s.Rafters[0]-half-j.Over, s.Rafters[len(s.Rafters)-1]+half+j.Over
	place := s.fasciaAxes(b.job)
	place.O.X = from
	b.add(Member{Kind: KindFascia, No: 1, Section: j.Section, Timber: j.Timber, Length: to - from, Place: place})
}

// fasciaAxes is how the fascia stands, at x = 0.
func (s Setout) fasciaAxes(j *Job) geom.Axes {
	size := j.Fascia.Section
	if j.Rafters.Tail.Shape == TailSquare {
		slope := s.onSlope()
		end := (s.lineAt - s.RafterEnd) / s.cos
		return geom.Axes{O: slope.Point(geom.V(end+size.Width, 0, -size.Depth)), U: geom.V(1, 0, 0), V: slope.U.Neg(), W: slope.W}
	}
	a := geom.World()
	a.O = geom.V(0, s.RafterEnd-size.Width, s.RafterTop(s.RafterEnd)-size.Depth)
	return a
}

// valancePrisms makes the valance: a board in each bay, or one for all.
func (b *builder) valancePrisms() {
	j := b.job.Valance
	b.valances = len(b.members)
	if j.Section.Depth == 0 {
		return
	}
	place, k := geom.World(), b.set.Front()
	if j.Set == ValanceFace {
		place.O = geom.V(k.From, k.Outer-j.Section.Width, k.Bottom-j.Below)
		b.add(Member{Kind: KindValance, No: 1, Section: j.Section, Timber: j.Timber, Length: k.To - k.From, Place: place})
		return
	}
	half := b.job.Posts.Section.Width / 2
	for i := 1; i < len(k.Posts); i++ {
		from, to := b.job.Posts.At[k.Posts[i-1]].Along+half, b.job.Posts.At[k.Posts[i]].Along-half
		place.O = geom.V(from, k.Outer+j.Back, k.Bottom-j.Section.Depth)
		b.add(Member{Kind: KindValance, No: i, Section: j.Section, Timber: j.Timber, Length: to - from, Place: place})
	}
}

// joinTrim makes the joints of blocks, fascia and valance.
func (b *builder) joinTrim() {
	bays, front := len(b.set.Rafters)-1, b.set.Front()
	for i := b.blocks; i < b.battens; i++ {
		left := b.rafters + (i-b.blocks)%bays
		b.standBetween(JointBlockRafter, i, left, left+1)
	}
	for i := b.fascia; i < b.valances; i++ {
		for k := range b.set.Rafters {
			b.fixFascia(i, b.rafters+k)
		}
	}
	for i := b.valances; i < b.packers; i++ {
		if b.job.Valance.Set == ValanceFace {
			b.hangOnFace(i, front.Members[0])
			continue
		}
		at := i - b.valances
		b.standBetween(JointValancePost, i, b.posts+front.Posts[at], b.posts+front.Posts[at+1])
	}
}

// layOutTrim works out what stands before the beam.
func (c *checker) layOutTrim() {
	j, s := c.job, &c.set
	k := s.Front()
	for _, p := range s.Braces {
		s.TrimOut = min(s.TrimOut, p.Knee.Y)
	}
	if v := j.Valance; v.Section.Depth > 0 && v.Set == ValanceFace {
		s.TrimOut = min(s.TrimOut, k.Outer-v.Section.Width)
	}
	if j.Fascia.Section.Depth > 0 {
		a := s.fasciaAxes(j)
		s.TrimOut = min(s.TrimOut, a.O.Y, a.Point(geom.V(0, 0, j.Fascia.Section.Depth)).Y)
	}
}
