// node solids.mjs < FIGURES: makes every timber anew from what `plumbcut figures` prints, read as the
// README explains it, with a modeller of triangle meshes. One line of figures for each job; prints for
// each a line with what was made: volumes, boxes in the world, areas of sections.
import { readFileSync } from 'node:fs'
import Module from 'manifold-3d'

const modeller = await Module()
modeller.setup()
const { Manifold } = modeller

const far = 1e5 // beyond every timber
const clear = 1 // past a face, so that no skin stays
const tan = (degrees) => Math.tan(degrees * Math.PI / 180)
const sin = (degrees) => Math.sin(degrees * Math.PI / 180)
const cos = (degrees) => Math.cos(degrees * Math.PI / 180)

// Directions in a timber that slopes down along u, in u and w.
const plumb = (angle) => [-sin(angle), cos(angle)]
const level = (angle) => [cos(angle), sin(angle)]
const add = (p, ...steps) => steps.reduce(([u, w], [length, [x, y]]) => [u + length * x, w + length * y], p)

// A round thing of many flat sides has the area of the circle.
const sides = 360
const fair = Math.sqrt(2 * Math.PI / sides / Math.sin(2 * Math.PI / sides))
const rod = (radius, length) => Manifold.cylinder(length, radius * fair, radius * fair, sides)
// A round footing is concrete, which nobody cuts: its model is content with few flats, their corners on the circle.
const flats = 48

// across is a piece with an outline in u and w, over the whole width.
function across(m, outline) {
  return Manifold.hull(outline.flatMap(([u, w]) => [[u, -clear, w], [u, m.width + clear, w]]))
}

const box = (from, to) => Manifold.hull([0, 1, 2, 3, 4, 5, 6, 7].map((i) => [0, 1, 2].map((k) => (i >> k & 1 ? to : from)[k])))

// face tells of a face which coordinate is constant on it, where, and which way in.
function face(m, name) {
  if (name === 'datum end') return { axis: 0, at: 0, inwards: 1 }
  if (name === 'far end') return { axis: 0, at: m.length, inwards: -1 }
  const i = m.faces.indexOf(name)
  if (i < 0) throw new Error(`${m.kind} ${m.no} has no face ${name}`)
  const axis = i < 2 ? 1 : 2
  return { axis, at: i % 2 ? [m.width, m.depth][axis - 1] : 0, inwards: i % 2 ? -1 : 1 }
}

// into is the point so far along, so far across the face and so deep under it.
function into(f, along, acrossFace, deep) {
  const p = [along, acrossFace, acrossFace]
  p[f.axis] = f.at + f.inwards * deep
  return p
}

// saw is a cut right through: what lies where the normal points is kept.
const saw = (normal, point) => ({ normal, offset: normal.reduce((sum, n, i) => sum + n * point[i], 0) / Math.hypot(...normal) })

// The work of each kind of feature: pieces to take away, or saw cuts.
const works = {
  'end cut'(m, { face: end, at, angles }) {
    const out = end === 'datum end' ? 1 : -1
    return saw([out, -out * tan(angles.plan), out * tan(angles.slope)], [at, 0, m.depth])
  },
  birdsmouth(m, { at, sizes, angles }) {
    const up = plumb(angles['to member']), out = level(angles['to member'])
    const heel = add([at, m.depth], [-sizes.heel, up])
    return across(m, [heel, add(heel, [-sizes.over, out]), add(heel, [-far, up]), add(heel, [-sizes.over, out], [-far, up])])
  },
  'bevelled tail'(m, { at, sizes, angles }) {
    const up = plumb(angles['to member']), out = level(angles['to member'])
    const nose = add([at, m.depth], [-sizes.nose, up])
    const [u, w] = add([0, 0], [cos(angles.splay), up], [-sin(angles.splay), out])
    return saw([u, 0, w], [nose[0], 0, nose[1]])
  },
  'level seat'(m, { at, angles }) {
    const up = plumb(angles['to member']), out = level(angles['to member'])
    return across(m, [[at, 0], add([at, 0], [far, out]), add([at, 0], [-far, up]), add([at, 0], [far, out], [-far, up])])
  },
  'level seat with shoulder'(m, { at, sizes, angles }) {
    const up = plumb(angles['to member']), out = level(angles['to member'])
    const inner = add([at, 0], [sizes.shoulder, up])
    return across(m, [inner, add(inner, [-far, out]), add(inner, [-far, up]), add(inner, [-far, out], [-far, up])])
  },
  housing(m, { face: name, at, sizes, angles }) {
    const f = face(m, name)
    const { floor, skew = 0, 'floor along': along = 0 } = angles
    const corners = []
    for (const mouth of [at - sizes.width / 2, at + sizes.width / 2]) {
      for (const deep of [-clear, sizes.depth]) {
        const u = mouth + deep * tan(skew)
        const low = sizes.floor + deep * tan(floor) + (u - at) * tan(along)
        for (const w of [low, m.depth + clear]) corners.push(into(f, u, w, deep))
      }
    }
    return Manifold.hull(corners)
  },
  'brace housing'(m, { face: name, at, sizes, angles }) {
    const f = face(m, name)
    const corners = []
    for (const deep of [-clear, sizes.depth]) {
      for (const u of [at - sizes.width / 2, at + sizes.width / 2]) {
        for (const y of [sizes.from, sizes.to]) corners.push(into(f, u + deep * tan(angles.lean), y, deep))
      }
    }
    return Manifold.hull(corners)
  },
  check(m, { face: name, at, sizes }) {
    const f = face(m, name)
    return box(into(f, at - sizes.width / 2, -clear, -clear), into(f, at + sizes.width / 2, m.width + clear, sizes.depth))
  },
  'check-out'(m, { face: name, at, sizes }) {
    const f = face(m, name)
    const ends = [at < 1e-6 ? -clear : at, sizes.to > m.length - 1e-6 ? m.length + clear : sizes.to]
    return box(into(f, ends[0], -far, -clear), into(f, ends[1], far, sizes.depth))
  },
  chamfer(m, { at, sizes, angles }) {
    const edge = [at, sizes.seat]
    return across(m, [edge, [at + far, sizes.seat], add(edge, [far, [-sin(angles.slope), cos(angles.slope)]]), [at + far, far]])
  },
  socket(m, { at, sizes }) {
    return box([at, sizes.left, sizes.outer], [far, sizes.right, sizes.house])
  },
  weathering(m, { at, sizes }) {
    const cuts = []
    // From the post's foot down to the footing's edge, on each side where there is room.
    for (const [axis, foot, edge] of [[1, sizes.left, 0], [1, sizes.right, m.width], [2, sizes.outer, 0], [2, sizes.house, m.depth]]) {
      const out = Math.sign(edge - foot)
      if (out === 0) continue
      const normal = [-Math.abs(edge - foot), 0, 0], point = [at, 0, 0]
      normal[axis] = -out * sizes.collar
      point[axis] = foot
      cuts.push(saw(normal, point))
    }
    return cuts
  },
  hole(m, { kind, face: name, at, sizes }) {
    const f = face(m, name)
    const deep = sizes.depth + (kind.endsWith(' through') ? clear : 0)
    const mouth = [at, sizes.v, sizes.w]
    mouth[f.axis] = f.at - f.inwards * clear
    // A rod stands along z: turned so that it goes in.
    const turn = [[0, f.inwards * 90, 0], [-f.inwards * 90, 0, 0], [f.inwards > 0 ? 0 : 180, 0, 0]][f.axis]
    return rod(sizes.diameter / 2, deep + clear).rotate(turn).translate(mouth)
  },
  'shaped end'(m, { face: end, at, sizes }) {
    const out = end === 'far end' ? 1 : -1
    const outline = [[at + out * far, m.depth + clear], [at, m.depth + clear], [at, m.depth]]
    for (let i = 1; `back ${i}` in sizes; i++) {
      const to = [at - out * sizes[`back ${i}`], m.depth - sizes[`down ${i}`]]
      outline.push(...arc(outline.at(-1), to, out, sizes[`round ${i}`] ?? -sizes[`hollow ${i}`]), to)
    }
    outline.push([outline.at(-1)[0], -clear], [at + out * far, -clear])
    if (out < 0) outline.reverse() // it must run anticlockwise
    // Drawn in x and y and raised along z, then laid so that x is u, y is w and z is −v.
    return Manifold.extrude([outline], m.width + 2 * clear).rotate([90, 0, 0]).translate([0, m.width + clear, 0])
  },
}

// arc gives points between two ends of the shorter arc; a radius below 0 is that of a hollow.
function arc([x0, y0], [x1, y1], out, radius) {
  if (!radius) return []
  const half = Math.hypot(x1 - x0, y1 - y0) / 2
  // Seen along the line at a far end the timber lies on the right.
  const bulge = out * Math.sign(radius), left = [-(y1 - y0) / 2 / half, (x1 - x0) / 2 / half]
  const back = bulge * Math.sqrt(Math.max(0, radius * radius - half * half))
  const centre = [(x0 + x1) / 2 - back * left[0], (y0 + y1) / 2 - back * left[1]]
  const start = Math.atan2(y0 - centre[1], x0 - centre[0])
  const turn = -bulge * 2 * Math.asin(Math.min(1, half / Math.abs(radius)))
  const n = 400
  return Array.from({ length: n - 1 }, (_, i) => {
    const a = start + turn * (i + 1) / n
    return [centre[0] + Math.abs(radius) * Math.cos(a), centre[1] + Math.abs(radius) * Math.sin(a)]
  })
}

function work(kind) {
  if (/ hole( through)?$/.test(kind)) return works.hole
  if (/^(plumb|level|skew|compound) cut$/.test(kind)) return works['end cut']
  if (/ end$/.test(kind)) return works['shaped end']
  if (kind in works) return works[kind]
  throw new Error(`the README knows no feature ${kind}`)
}

function timber(m) {
  let solid = m.round
    ? Manifold.cylinder(m.length, m.width / 2, m.width / 2, flats).rotate([0, 90, 0]).translate([0, m.width / 2, m.depth / 2])
    : box([0, 0, 0], [m.length, m.width, m.depth])
  const all = m.features.flatMap((f) => work(f.kind)(m, f))
  for (const f of all) if (f.normal) solid = solid.trimByPlane(f.normal, f.offset)
  return Manifold.difference([solid, ...all.filter((f) => !f.normal)])
}

// stations are where a timber is cut through: at odd places, and beside and in its features.
function stations(m) {
  const at = [0.0713, 0.3391, 0.7179, 0.9547].map((part) => part * m.length)
  for (const f of m.features.slice(0, 6)) at.push(f.at - 1.3, f.at + 0.9)
  return at.filter((u) => u > 0 && u < m.length)
}

// asMade is a timber in its own axes with its measures. Alike ones are made once.
const done = new Map()
function asMade({ no, place, ...m }) {
  const key = JSON.stringify(m)
  if (!done.has(key)) {
    const solid = timber(m)
    const upright = solid.rotate([0, -90, 0]) // u is up
    const sections = stations(m).map((at) => ({ at, area: upright.slice(at).area() }))
    done.set(key, { solid, measures: { volume: solid.volume(), sections } })
  }
  return done.get(key)
}

function made(m) {
  const { solid, measures } = asMade(m)
  const { origin: o, u, v, w } = m.place
  const { min, max } = solid.transform([...u, 0, ...v, 0, ...w, 0, ...o, 1]).boundingBox()
  return { ...measures, min, max }
}

for (const line of readFileSync(0, 'utf8').split('\n').filter(Boolean)) {
  console.log(JSON.stringify(JSON.parse(line).members.map(made)))
}
