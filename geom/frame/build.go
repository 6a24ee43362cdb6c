package frame

import (
	"math"

	"plumbcut/geom"
)

// Build makes the model of a job. The error is Errors, all that stands in the
// way at once; what is buildable but doubtful is in the frame's Warnings.
func Build(j *Job) (*Frame, error) {
	c := newChecker(j)
	c.validate()
	if err := c.errs.Err(); err != nil {
		return nil, err
	}
	b := &builder{job: j, set: c.set, slope: c.slope, check: c}
	b.prisms()
	b.join()
	b.mark()
	b.carve()
	b.checkLayers()
	b.checkSlatEnds()
	roof := b.roof()
	if err := c.errs.Err(); err != nil {
		return nil, err
	}
	f := &Frame{
		Job:     j,
		Slope:   c.slope,
		Setout:  c.set,
		Members: b.members,
		Joints:  b.joints,
		Levels:  b.levels(),
		Roof:    roof,
		House:   houseAround(c, b.members, roof),
	}
	f.Levels = append(f.Levels, roof.levels(c.set)...)
	f.stockWarnings(c)
	c.checkStraps()
	f.Warnings = c.warns
	return f, nil
}

// builder holds a frame in the making: first the bare prisms, then the joints
// write their features, then the solids are carved from both.
type builder struct {
	job     *Job
	set     Setout
	slope   Slope
	check   *checker
	members []Member
	joints  []Joint

	// index of the first of each kind
	posts, rafters, battens, laths, slats, cleats, packers int
	braces, blocks, fascia, valances                       int
	footings                                               []int   // per post, its footing's index
	postPackers                                            [][]int // per post, its packers' indices
}

// add appends a prism and returns its index.
func (b *builder) add(m Member) int {
	b.members = append(b.members, m)
	return len(b.members) - 1
}

// prisms makes every stick, uncut, in its place.
func (b *builder) prisms() {
	j, s := b.job, b.set
	count := map[Kind]int{}
	for i, k := range s.Carriers {
		level := geom.World()
		level.O = geom.V(k.From, k.Outer, k.Bottom)
		for ply := range k.plies() {
			count[k.Kind]++
			if ply == 0 {
				level.O.Y = k.Inner - k.Section.Width
			} else {
				level.O.Y = k.Outer
			}
			m := Member{
				Kind: k.Kind, No: count[k.Kind], Section: k.Section, Timber: k.Timber,
				Length: k.To - k.From, Place: k.place(level),
			}
			b.endTurn(&m, k)
			s.Carriers[i].Members = append(s.Carriers[i].Members, b.add(m))
		}
	}
	b.posts = len(b.members)
	for i, p := range j.Posts.At {
		k, bottom := s.Under(i), b.check.postBottom(p)
		place := upright(geom.V(p.Along-j.Posts.Section.Width/2, k.PostOuter, bottom))
		if k.Back {
			place = turned(geom.V(p.Along+j.Posts.Section.Width/2, k.PostOuter+j.Posts.Section.Depth, bottom))
		}
		b.add(Member{
			Kind: KindPost, No: i + 1, Section: j.Posts.Section, Timber: j.Posts.Timber,
			Length: k.PostTop - bottom, Place: k.place(place),
		})
	}
	b.bracePrisms()
	b.rafterPrisms()
	b.blockPrisms()
	b.battenPrisms()
	b.lathPrisms()
	b.slatPrisms()
	b.fasciaPrism()
	b.valancePrisms()
	b.packerPrisms()
	b.footingPrisms()
}

// upright returns the axes of a timber that stands and is seen from outside:
// U up, V to the right, W into the house.
func upright(o geom.Vec) geom.Axes {
	return geom.Axes{O: o, U: geom.V(0, 0, 1), V: geom.V(1, 0, 0), W: geom.V(0, 1, 0)}
}

// turned returns the axes of one that is seen from behind, so that its outer
// side looks to the rear: U up, V to the left, W to the front.
func turned(o geom.Vec) geom.Axes {
	return geom.Axes{O: o, U: geom.V(0, 0, 1), V: geom.V(-1, 0, 0), W: geom.V(0, -1, 0)}
}

func (b *builder) rafterPrisms() {
	j, s := b.job, b.set
	b.rafters = len(b.members)
	end := s.RafterStart
	slope := s.onSlope()
	depth := j.Rafters.Section.Depth
	half := j.Rafters.Section.Width / 2
	for i, x := range s.Rafters {
		line := max(rafterLine(s.Cut(x-half)), rafterLine(s.Cut(x+half)))
		slope.O = geom.V(x-j.Rafters.Section.Width/2, end, s.RafterTop(end)).Sub(slope.W.Mul(depth))
		b.add(Member{
			Kind: KindRafter, No: i + 1, Section: j.Rafters.Section, Timber: j.Rafters.Timber,
			Length: line + s.Front().Hold.way().past(j, s), Place: slope,
		})
	}
}

// packerPrisms makes the plate's packers, then those of each wall post.
func (b *builder) packerPrisms() {
	j, s := b.job, b.set
	b.packers = len(b.members)
	add := func(p Packer, place geom.Axes, timber Timber) int {
		timber.Nominal = "" // that of the timber before it
		return b.add(Member{
			Kind: KindPacker, No: len(b.members) - b.packers + 1, Place: place, Length: p.Height,
			Section: Section{Depth: p.Thickness, Width: p.Width}, Timber: timber,
		})
	}
	if p := j.Plate.Packer; p.Thickness > 0 {
		middle := j.Plate.Top - j.Plate.Section.Depth/2
		for _, f := range s.PlateFixings {
			add(p, upright(geom.V(f.Along-p.Width/2, s.Rear().Inner, middle-p.Height/2)), j.Plate.Timber)
		}
	}
	b.postPackers = make([][]int, len(j.Posts.At))
	for i, p := range j.Posts.At {
		k := p.Packer
		for _, z := range s.PostFixings[i] {
			if k.Thickness == 0 {
				b.postPackers[i] = append(b.postPackers[i], theHouse)
				continue
			}
			// Seen facing the return: V to the right, W into it.
			post := b.members[b.posts+i].Place.O
			y := post.Y + (j.Posts.Section.Depth-k.Width)/2
			a := geom.Axes{
				O: geom.V(post.X, y, z-k.Height/2),
				U: geom.V(0, 0, 1), V: geom.V(0, 1, 0), W: geom.V(-1, 0, 0),
			}
			if p.Wall == Right {
				a.O = geom.V(post.X+j.Posts.Section.Width, y+k.Width, z-k.Height/2)
				a.V, a.W = a.V.Neg(), a.W.Neg()
			}
			b.postPackers[i] = append(b.postPackers[i], add(k, a, j.Posts.Timber))
		}
	}
}

// footingPrisms makes the footings. Each has the number of its post.
func (b *builder) footingPrisms() {
	b.footings = make([]int, len(b.job.Posts.At))
	for i, p := range b.job.Posts.At {
		if !p.Dug() {
			b.footings[i] = theHouse
			continue
		}
		f := p.Footing
		post := b.members[b.posts+i]
		place := post.Place // turned as the post is
		place.O = post.Place.Point(geom.V(0, (post.Section.Width-f.Size)/2, (post.Section.Depth-f.Size)/2))
		place.O.Z = p.Ground - f.Depth
		b.footings[i] = b.add(Member{
			Kind: KindFooting, No: i + 1, Round: f.Round,
			Section: Section{Depth: f.Size, Width: f.Size}, Length: f.Depth + f.Collar,
			Place: place,
		})
	}
}

// join makes every joint. The order is that of the features on each member.
func (b *builder) join() {
	for i := range b.set.Rafters {
		for _, k := range b.set.Carriers {
			k.Hold.way().join(b, k, b.rafters+i, k.Members[0])
		}
	}
	for i, p := range b.job.Posts.At {
		k := b.set.Under(i)
		b.job.Posts.Meet.Meeting.way().join(b, k, b.posts+i)
		p.Base.of().join(b, b.posts+i, b.footings[i], p)
		for k, z := range b.set.PostFixings[i] {
			b.fixPost(b.posts+i, b.postPackers[i][k], p, z)
		}
	}
	for i, f := range b.set.PlateFixings {
		packer := theHouse
		if b.job.Plate.Packer.Thickness > 0 {
			packer = b.packers + i
		}
		b.fixPlate(b.set.Rear().Members[0], packer, f)
	}
	for i, p := range b.set.Braces {
		b.joinBrace(b.braces+i, b.posts+p.Post, b.set.Under(p.Post).Members[0], p)
	}
	b.joinTrim()
	for i, run := range b.set.BattenRuns {
		for k := run[0]; k <= run[1]; k++ {
			b.job.Battens.Lie.lay().join(b, b.battens+i, b.rafters+k)
		}
	}
	b.joinSlats()
	if laths, ok := b.set.Layer(KindLath); ok {
		for i := range laths.At {
			for k := range b.set.Battens {
				b.layLath(b.laths+i, b.battens+k)
			}
		}
	}
}

// carve makes the solids from prism and features alone. Alike members are
// carved once and then set in their places.
func (b *builder) carve() {
	done := map[string]geom.Solid{}
	for i := range b.members {
		m := &b.members[i]
		key := m.Mark + "/" + string(m.Hand)
		s, ok := done[key]
		if !ok {
			s = m.Carved()
			done[key] = s
		}
		m.solid = s.Placed(m.Place)
	}
}

// roundFacets is the number of flats that stand for a round footing's side. A
// multiple of four keeps its greatest measures exact; with 48 the side is
// within 0.5 mm of the true circle at 450 across, and concrete is not cut.
const roundFacets = 48

func roundPrism(m Member) geom.Solid {
	r := m.Section.Width / 2
	ring, smooth := make([]geom.Pt, roundFacets), make([]bool, roundFacets)
	for i := range ring {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / roundFacets)
		ring[i], smooth[i] = geom.P(r+r*cos, r+r*sin), true
	}
	onEnd := geom.Axes{U: geom.V(0, 1, 0), V: geom.V(0, 0, 1), W: geom.V(1, 0, 0)}
	return geom.Prism(ring, smooth, 0, m.Length).Placed(onEnd)
}
