// Package cutting says which sticks to buy and how to cut all pieces from them:
// for the least stated cost, or else for the least length bought. It knows
// lengths, a saw and prices; what the sticks are made of it does not know.
//
//	|trim| piece  |k|  piece   |k| piece |k|    offcut    |  defects  |trim|
//	|<---------------------------- as bought ------------------------------>|
//	     |<--------------- usable length ---------------->|
//
// Goals, in this order:
//
//   - Never to call a plan the best that is not. Each plan carries a bound that
//     no plan can beat, reckoned in whole numbers; it is proven when the two meet.
//   - To find the best plan, and prove it, for the jobs of one building at once.
//   - The same plan for the same job on every machine: effort is counted in steps
//     of the search, not in seconds.
//
// How it goes, from [Solve]:
//
//	Job ─ check ─▶ problem: alike pieces as sizes, whole numbers
//	                  │
//	                  ├─▶ greedy      a first plan, stick by stick
//	                  ├─▶ relaxation  patterns cut a fraction of a time: the bound
//	                  ├─▶ dives       relaxations rounded step by step to good plans
//	                  └─▶ search      every plan that the bounds leave, while work is left
//	                  │
//	                Plan: sticks, sums, bound
//
// A relaxation is a linear program with a column for each way to cut a stick.
// There are far too many, so the columns are made when wanted: the simplex gives
// each piece a value, and a knapsack finds the pattern whose pieces are worth
// more than its stick costs. When there is none, the values prove the bound.
//
// Left out: sheets and other cutting in two directions; pieces with joints or
// mitres that nest; which end of a stick has the knot; a wish for few patterns or
// for offcuts of a handy length. Of plans that cost the same, one that buys less
// length is taken if it is seen, but it is not looked for.
package cutting
