package frame

import "testing"

// TestMarks: alike sticks share a mark; the two wall posts are mirror images
// and share theirs with a hand each; the free post differs.
func TestMarks(t *testing.T) {
	f := mustBuild(t, walled(leanTo()))
	want := []struct {
		kind     Kind
		no       int
		mark     string
		hand     Hand
		quantity int
	}{
		{KindPlate, 1, "WP1", NoHand, 1},
		{KindBeam, 1, "B1", NoHand, 1},
		{KindPost, 1, "P1", LeftHand, 1},
		{KindPost, 2, "P2", NoHand, 1},
		{KindPost, 3, "P1", RightHand, 1},
		{KindRafter, 1, "R1", NoHand, 11},
		{KindRafter, 11, "R1", NoHand, 11},
		{KindBatten, 1, "BT1", NoHand, 18},
		{KindPacker, 1, "PK1", NoHand, 10},
		{KindPacker, 11, "PK2", NoHand, 8},
		{KindFooting, 1, "F1", NoHand, 3},
	}
	for _, w := range want {
		m, ok := f.Member(w.kind, w.no)
		if !ok || m.Mark != w.mark || m.Hand != w.hand || m.Quantity != w.quantity {
			t.Errorf("%s %d: %s hand %q × %d, want %s hand %q × %d", w.kind, w.no, m.Mark, m.Hand, m.Quantity, w.mark, w.hand, w.quantity)
		}
	}
	if _, ok := f.Member(KindPost, 4); ok {
		t.Error("there is a fourth post")
	}
}

// TestMarksDiffer: posts of other lengths get other marks.
func TestMarksDiffer(t *testing.T) {
	j := leanTo()
	j.Posts.At[1].Ground -= 200
	posts := mustBuild(t, j).Of(KindPost)
	if posts[0].Mark != "P1" || posts[1].Mark != "P2" || posts[2].Mark != "P1" || posts[0].Quantity != 2 {
		t.Errorf("marks %s %s %s, want P1 P2 P1", posts[0].Mark, posts[1].Mark, posts[2].Mark)
	}
}
