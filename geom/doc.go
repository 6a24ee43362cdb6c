// Package geom is the exact kernel: points, planes and solids, and what a
// drawing needs of them. It cuts solids by planes and by other solids, cuts
// sections through them, and draws them from any side with the hidden lines
// parted from the visible ones at computed places. It knows nothing of timber,
// paper or files.
//
// Everything is in float64 millimetres and radians, in one right-handed world:
// x to the right along the wall, y into the house, z up.
//
// # How a solid is kept
//
// A [Solid] is a set of convex cells that touch but do not overlap, and a list
// of round bores, which stay true cylinders. Taking a pocket out of a beam
// divides the one cell around it:
//
//	┌──────────────┐      ┌────┐    ┌─────┐
//	│              │  →   │ 1  ├────┤  2  │
//	│              │      │    │ 3  │     │
//	└──────────────┘      └────┴────┴─────┘
//
// All planes of a solid stand in one table, each once. So whether two faces
// lie in one plane is a comparison of numbers, made once, when the plane came
// in. The seams between cells are never seen: where two cells lie against each
// other their rims cancel, and what is left is the rim of the real faces.
// [Solid.Faces], [Solid.Edges] and [Solid.Section] all read it off that.
//
// The convex cell is also why hidden lines are simple and exact: of a
// straight line it hides one stretch, whose ends are found by division.
// [Strokes] says more.
//
// # Tolerances
//
// Each is a named constant with its reason. They follow from two figures:
// rounding, which at 50 m is about 1e-10 mm, and the smallest size that
// anybody states, 0.01 mm. What differs by less than 1e-6 mm is the same; what
// differs by about that much is not meant by anyone, and may come out either
// way. In a picture, lines less than 0.001 mm apart are drawn as one.
//
// # What is left out
//
//   - Curved solids other than bores. A curved profile is a row of facets that
//     know that they are one curve, so that no facet's edge is drawn; what an
//     arc of a [Sweep] has cut is drawn as the true arc.
//   - Unions. Bodies are drawn side by side, and never need to be one.
//   - Seeing through a bore to what lies behind it, and bores that meet.
//   - Perspective, shading and surfaces of any other kind.
package geom
