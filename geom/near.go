package geom

import "math"

// near finds earlier entries by a fingerprint: one number that changes little
// when the thing it stands for changes little. Looking things up "within a
// tolerance" then costs the same for ten entries and for ten thousand.
// The zero value is ready for use.
type near struct {
	print []float64       // fingerprint of each entry
	head  map[int64]int32 // bucket → its latest entry; nil while the set is small
	next  []int32         // earlier entry of the same bucket, or −1
}

const (
	// nearCell is the width of a bucket. It is far above every tolerance that
	// is looked up, so that one look touches at most two buckets.
	nearCell = 0.05

	// nearLinear is the size up to which a plain walk is quicker than a map.
	nearLinear = 24
)

// mix holds fixed weights without simple ratios, so that the points of a
// square grid get different fingerprints.
var mix = Vec{0.6434501713, 0.3713907612, 0.6694236437}

// add makes the next entry. Entries are numbered from 0 in order of adding.
func (n *near) add(print float64) {
	n.print = append(n.print, print)
	if n.head == nil {
		if len(n.print) <= nearLinear {
			return
		}
		n.head = make(map[int64]int32, 4*nearLinear)
	}
	for i := len(n.next); i < len(n.print); i++ {
		k := bucket(n.print[i])
		last, ok := n.head[k]
		if !ok {
			last = -1
		}
		n.next = append(n.next, last)
		n.head[k] = int32(i)
	}
}

// find returns an entry whose fingerprint lies within tol and for which same
// reports true, or −1.
func (n *near) find(print, tol float64, same func(i int32) bool) int32 {
	if n.head == nil {
		for i, p := range n.print {
			if math.Abs(p-print) <= tol && same(int32(i)) {
				return int32(i)
			}
		}
		return -1
	}
	for k := bucket(print - tol); k <= bucket(print+tol); k++ {
		i, ok := n.head[k]
		for ok && i >= 0 {
			if math.Abs(n.print[i]-print) <= tol && same(i) {
				return i
			}
			i = n.next[i]
		}
	}
	return -1
}

func bucket(print float64) int64 { return int64(math.Floor(print / nearCell)) }
