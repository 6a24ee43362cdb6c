package jobgen

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
)

// write puts the job down in the file's words, with whatever does not bear on
// whether it can be built chosen on the way.
func (g *gen) write(seed uint64) {
	g.line("plumbcut: 1")
	if g.inches {
		g.line("units: feet-inches")
	}
	g.writeProject(seed)
	g.line("levels:\n  datum: %s\n  ground: %s", g.pick("finished floor", "deck at the wall"), g.s(g.ground))
	if g.deckOut > 0 {
		g.line("  deck: {level: 0, out: %s}", g.s(g.deckOut))
	}
	if !g.free {
		g.writeWall()
	}
	if g.chance(0.5) {
		g.line("timber: {species: %s, grade: %s, treatment: for exposed use}", g.pick("pine", "larch", "oak"), g.pick("structural", "clear"))
	}
	if g.free {
		g.writeRearBeam()
	} else {
		g.writePlate()
	}
	g.line("beam:\n  section: %s", g.sec(g.beam))
	g.line("  from: %s\n  length: %s", g.s(g.beamFrom), g.s(g.beamTo-g.beamFrom))
	g.writeOut()
	g.writeHold(1)
	g.writePosts()
	g.writeRafters()
	if g.chance(0.8) {
		from := g.b.Len()
		g.writeBattens()
		g.writeSlats(from)
	}
	if g.skew != 0 {
		g.skewFall()
	} else {
		g.writeFall()
		g.writeBraces(seed)
		g.writeTrim(seed)
		g.writeRoofStraps(seed)
	}
	g.writeOrder()
	g.writeSite(seed)
	g.writeGround(seed)
}

// settleOrder decides, from random numbers of its own, what the job says of
// straps and of buying, so that jobs stay what they were without it.
func (g *gen) settleOrder(seed uint64) {
	own := gen{r: rand.New(rand.NewPCG(seed, stream+1)), inches: g.inches, rafter: g.rafter}
	if own.chance(0.3) {
		g.straps = fmt.Sprintf("{width: %s, length: %s, nails: %d}", own.s(own.size(20, 40)), own.s(own.size(120, 300)), 4+2*own.r.IntN(4))
	}
	if own.chance(0.5) {
		own.writeStock()
	}
	g.order = own.b.String()
}

// writeOrder adds what settleOrder decided.
func (g *gen) writeOrder() { g.b.WriteString(g.order) }

// writeStock says what timber is sold, and how the rest is bought.
func (g *gen) writeStock() {
	g.line("stock:\n  kerf: %s\n  end_trim: %s\n  defects: %d%%", g.s(g.size(2, 6)), g.s(g.size(0, 30)), g.r.IntN(6))
	if g.chance(0.6) {
		var lengths []string
		priced := g.chance(0.5)
		for l := g.size(1800, 3600); l < 6200; l += g.size(300, 900) {
			if item := g.s(g.up(l)); priced {
				lengths = append(lengths, fmt.Sprintf("{length: %s, price: %.2f}", item, l/1000*(4+g.r.Float64())))
			} else {
				lengths = append(lengths, item)
			}
		}
		g.line("  lengths: [%s]", strings.Join(lengths, ", "))
	}
	if g.chance(0.3) {
		g.line("  sections: [{section: %s, lengths: [%s, %s]}]", g.sec(g.rafter), g.s(g.size(2000, 4000)), g.s(g.size(4001, 7000)))
	}
	if g.chance(0.3) {
		g.line("  extra: {posts: %s, rafters: %s, beam: %s}", g.s(g.size(0, 300)), g.s(g.size(0, 100)), g.s(g.size(0, 50)))
	}
	g.line("hardware: {spare: %d%%}\nconcrete: {bag_yield: %.1f litres}", g.r.IntN(30), 5+10*g.r.Float64())
}

func (g *gen) writeProject(seed uint64) {
	g.line("project:\n  title: Random frame %d", seed)
	if g.chance(0.7) {
		g.line("  number: \"%d\"\n  client: %s\n  site: %d Sample %s", g.r.IntN(900)+100, g.pick("A. Client", "B. and C. Client"), g.r.IntN(200)+1, g.pick("Street", "Road"))
		g.line("  date: 20%02d-%02d-%02d\n  status: %s", g.r.IntN(20)+20, g.r.IntN(12)+1, g.r.IntN(28)+1, g.pick("preliminary", "for consent", "for construction"))
	}
	if g.chance(0.6) {
		sizes := []string{"A4", "A3", "A2", "A1"}
		if g.inches {
			sizes = []string{"Letter", "Tabloid", "ARCH B", "ARCH C"}
		}
		g.line("paper: {size: %s}", g.pick(sizes...))
	}
	if g.chance(0.5) {
		g.site = fmt.Sprintf("  north: %d\n", g.r.IntN(720)-360)
	}
	if g.chance(0.5) {
		g.line("basis:\n  wind: {value: Medium, by: the designer}\n  ground: firm clay")
	}
}

func (g *gen) writeWall() {
	clad := g.size(8, 40)
	if g.wall.clad > 0 {
		clad = g.wall.clad
	}
	g.line("wall:\n  cladding: %s", g.s(clad))
	if g.wall.kind != "" {
		g.line("  kind: %s%s", g.wall.kind, g.wall.more)
	}
	to := g.from + g.length
	plain := g.b.Len() // the studs are drawn of all jobs alike, and taken out where there are none
	switch {
	case g.chance(0.5):
		g.line("  studs: {first: %s, spacing: %s, width: %s}", g.s(g.from+g.size(-300, 300)), g.s(g.size(380, 620)), g.s(g.size(38, 50)))
	case g.chance(0.5):
		var at []string
		for x := g.from - 200; x < to+200; x += g.size(300, 750) {
			at = append(at, g.s(g.up(x)))
		}
		g.line("  studs: {at: [%s]}", strings.Join(at, ", "))
	}
	if g.wall.studless {
		g.cutBack(plain)
	}
	if g.wallLeft || g.wallRight {
		g.line("  returns:")
	}
	if g.wallLeft {
		g.line("    - {side: left, at: %s, length: %s}", g.s(g.from), g.s(g.out+g.size(0, 800)))
	}
	if g.wallRight {
		g.line("    - {side: right, at: %s, length: %s}", g.s(to), g.s(g.out+g.size(0, 800)))
	}
	g.writeOpenings()
	if g.chance(0.3) {
		g.soffit = true
		// Above the plate and whatever stands on the rafters near it.
		plain := g.b.Len()
		g.line("  soffit: {level: %s, out: %s}", g.s(g.top+g.up(g.rise)+g.size(200, 400)), g.s(g.size(300, 700)))
		if g.wall.kind == "fascia" {
			g.cutBack(plain)
		}
	}
}

// cutBack takes out what was written after a length.
func (g *gen) cutBack(length int) {
	kept := g.b.String()[:length]
	g.b.Reset()
	g.b.WriteString(kept)
}

// writeOpenings sets doors and windows below the plate, apart from each other.
func (g *gen) writeOpenings() {
	head := g.top - g.plate.depth
	x := g.from + g.size(0, 800)
	first := true
	for x < g.from+g.length-1000 && g.chance(0.6) {
		w := g.size(600, min(2400, g.from+g.length-x-200))
		if first {
			g.line("  openings:")
			first = false
		}
		h := g.up(min(head, 2150) - 30)
		if g.chance(0.5) && h > 1000 {
			g.line("    - {window: window, from: %s, to: %s, sill: %s, head: %s}", g.s(x), g.s(x+w), g.s(g.up(h-900)), g.s(h))
		} else {
			g.line("    - {door: door, from: %s, to: %s, sill: 0, head: %s}", g.s(x), g.s(x+w), g.s(h))
		}
		x = g.up(x + w + g.size(300, 1500))
	}
}

func (g *gen) writePlate() {
	g.line("plate:\n  section: %s\n  from: %s\n  length: %s", g.sec(g.plate), g.s(g.from), g.s(g.length))
	if g.chance(0.5) {
		g.line("  top: %s", g.s(g.top))
	} else {
		g.line("  underside: %s", g.s(g.top-g.plate.depth))
	}
	wide, high := g.size(50, 90), 0.0
	if g.packer > 0 {
		high = g.size(60, g.plate.depth)
		g.line("  packers: {thickness: %s, width: %s, height: %s}", g.s(g.packer), g.s(wide), g.s(high))
	}
	g.writeHold(0)
	screw := g.size(8, 12)
	hole := g.up(screw + 1)
	g.line("  fixing: {screw: %s, hole: %s, spacing: %s, from_rafter: %s%s%s}", g.s(screw), g.s(hole), g.s(g.size(2*wide+220, 1200)), g.s(g.size(30, 80)), g.rows(hole, high), g.wall.fixing)
}

func (g *gen) writePosts() {
	g.line("posts:\n  section: %s", g.sec(g.post))
	chamfer, base := g.r.IntN(31), g.pick("concrete", "stirrup")
	if g.stand.base != "" {
		base = g.stand.base
	}
	if g.meet.runsUp() {
		chamfer = min(chamfer, meetChamfer)
	}
	if g.meet.way != onBracket {
		g.line("  chamfer: %d°", chamfer)
	}
	g.line("  base: %s", base)
	g.writeMeet()
	across := math.Hypot(g.post.depth, g.post.width)
	wide := g.size(across+30, 450)
	g.hole = wide
	plain := g.b.Len()
	g.line("  footing: {shape: %s, size: %s, depth: %s, pad: %s, collar: %s, stand: %s}", g.pick("round", "square"),
		g.s(wide), g.s(g.size(450, 1000)), g.s(g.size(0, 200)), g.s(g.size(0, 50)), g.s(g.size(50, 120)))
	if g.stand.base != "" {
		if !g.stand.mixed {
			g.cutBack(plain)
		}
		g.line("  shoe: %s", g.stand.shoe)
	}
	if g.rod > 0 {
		g.line("  rod: {diameter: %s, hole: %s, into_post: %s}", g.s(g.rod), g.s(g.up(g.rod+2)), g.s(g.size(100, 250)))
	}
	if g.wallLeft || g.wallRight {
		g.line("  packers: {thickness: %s, width: %s, height: %s}", g.s(g.wallGap), g.s(g.post.depth), g.s(g.size(80, 150)))
		g.line("  fixing: {spacing: %s}", g.s(g.size(600, 1000)))
	}
	g.line("  at:")
	first, last := g.beamFrom+g.post.width/2, g.beamTo-g.post.width/2
	if g.wallLeft {
		first = g.from + g.wallGap - g.wall.sunk + g.post.width/2
	} else {
		first = g.nearEnd(first, 1)
	}
	if g.wallRight {
		last = g.from + g.length - g.wallGap + g.wall.sunk - g.post.width/2
	} else {
		last = g.nearEnd(last, -1)
	}
	n := 2 + g.r.IntN(1+int((last-first)/max(1200, 2*wide)))
	first, last = first+g.past[0], last-g.past[1]
	for i := range n {
		x := first + (last-first)*float64(i)/float64(n-1)
		if i > 0 && i < n-1 {
			x = g.up(x) + g.size(-100, 100)
		}
		g.postAt = append(g.postAt, x)
		g.writePost(x, i == 0, i == 0 && g.wallLeft, i == n-1 && g.wallRight)
	}
	if g.free {
		g.writeRearPosts()
	}
}

// nearEnd moves an end post in from the beam's end, now and then.
func (g *gen) nearEnd(x, way float64) float64 {
	if g.chance(0.5) {
		return x + way*g.size(0, 250)
	}
	return x
}

func (g *gen) writePost(x float64, first, left, right bool) {
	keys := []string{"at: " + g.s(x)}
	if left {
		keys = append(keys, "wall: left")
	}
	if right {
		keys = append(keys, "wall: right")
	}
	if g.chance(0.2) {
		keys = append(keys, "ground: "+g.s(g.ground-g.size(0, 300)))
	}
	if g.chance(0.1) {
		base := g.pick("concrete", "stirrup")
		if g.stand.base == "" {
			keys = append(keys, "base: "+base)
		}
	}
	if first && g.stand.mixed {
		keys = append(keys, "base: concrete")
	}
	if len(keys) == 1 {
		g.line("    - %s", g.s(x))
		return
	}
	g.line("    - {%s}", strings.Join(keys, ", "))
}

func (g *gen) writeRafters() {
	g.line("rafters:\n  section: %s", g.sec(g.rafter))
	if g.chance(0.5) {
		g.line("  centres: %s", g.s(g.size(350, 1000)))
	} else {
		g.line("  number: %d", 3+g.r.IntN(max(1, int(g.length/350)-2)))
	}
	switch g.ends {
	case "inset":
		g.line("  inset: %s", g.s(g.inset))
	case "":
	default:
		g.line("  ends: %s", g.ends)
	}
	if g.level && (g.hold[0] == "" || g.hold[1] == "") {
		g.line("  seat: level")
	}
	g.writeOver()
	if g.straps != "" && g.skew == 0 {
		g.line("  straps: %s", g.straps)
	}
	if g.chance(0.3) && !g.inches && (g.hold[0] == "" || g.hold[1] == "") {
		g.line("  clearance: %g", float64(g.r.IntN(5))/2)
	}
}

func (g *gen) writeBattens() {
	g.batten = section{g.size(20, 70), g.size(20, 70)}
	lean := g.batten.depth * g.tan
	first, last := g.size(0, 120), g.up(lean+g.size(0, 120))
	room := (g.out-g.wide-g.packer-g.plate.width)*math.Hypot(1, g.tan) - first - last
	g.line("battens:\n  section: %s", g.sec(g.batten))
	g.writeLie(first, last)
	switch g.r.IntN(3) {
	case 0:
		g.line("  number: %d", 2+g.r.IntN(max(1, int(room/g.batten.width/1.5)-2)))
	case 1:
		g.line("  gap: %s", g.s(g.size(30, 250)))
	default:
		g.line("  shade: %s", fmt.Sprintf("%d%%", 15+g.r.IntN(60)))
	}
	g.line("  first: %s\n  last: %s", g.s(first), g.s(last))
	g.writeOverhangs()
	g.writeLaths(first)
}

// writeOverhangs says how far the battens run past the end rafters.
func (g *gen) writeOverhangs() {
	left, right := g.size(0, 200), g.size(0, 200)
	if g.wallLeft {
		left = 0
	}
	if g.wallRight {
		right = 0
	}
	if left == right || g.chance(0.3) {
		g.line("  overhang: %s", g.s(min(left, right)))
		return
	}
	g.line("  overhang_left: %s\n  overhang_right: %s", g.s(left), g.s(right))
}

// writeFall says the slope in one of the ways that there are.
func (g *gen) writeFall() {
	g.line("fall:")
	from, to := g.pick("wall face", "plate inner arris", "plate outer arris"), g.pick("beam inner arris", "beam outer arris")
	switch {
	case g.tan == 0:
		g.line("  drop: 0")
	case g.chance(0.4):
		run := g.out
		switch from {
		case "plate outer arris":
			run -= g.packer + g.plate.width
		case "plate inner arris":
			run -= g.packer
		}
		if to == "beam inner arris" {
			run -= g.wide
		}
		g.line("  drop: %s", g.s(g.up(run*g.tan)-g.up(1)))
	case g.chance(0.5):
		g.line("  angle: %.4f", math.Atan(g.tan)*180/math.Pi)
	default:
		g.line("  slope: 1:%.3f", 1/g.tan)
	}
	if g.chance(0.5) || from != "plate outer arris" {
		g.line("  from: %s\n  to: %s", g.arris(from), g.arris(to))
	}
}
