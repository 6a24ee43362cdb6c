package cutting

import (
	"errors"
	"fmt"
	"strings"
	"testing"
)

// parse reads a job of whole millimetres: "cut 3x997 1200 from 3000 4800@2610 2400@0x1 kerf 4
// trim 10 defect 30 share 1", where @ gives a price, x after it a limit and share percents.
func parse(t *testing.T, text string) Job {
	t.Helper()
	var j Job
	number := func(s string) int {
		var n int
		if _, err := fmt.Sscan(s, &n); err != nil {
			t.Fatalf("%s: %q is no number", text, s)
		}
		return n
	}
	mode := ""
	for _, word := range strings.Fields(text) {
		if strings.Trim(word, "abcdefghijklmnopqrstuvwyz") == "" {
			mode = word
			continue
		}
		switch mode {
		case "cut":
			count, length, many := strings.Cut(word, "x")
			if !many {
				count, length = "1", word
			}
			j.Pieces = append(j.Pieces, Piece{length, mm(number(length)), number(count)})
		case "from":
			word, limit, limited := strings.Cut(word, "x")
			length, price, priced := strings.Cut(word, "@")
			s := Stock{Label: length, Length: mm(number(length)), Priced: priced}
			if priced {
				s.Price = int64(number(price))
			}
			if limited {
				s.Limit = number(limit)
			}
			j.Stocks = append(j.Stocks, s)
		case "kerf":
			j.Kerf = mm(number(word))
		case "trim":
			j.Trim = mm(number(word))
		case "defect":
			j.Defect = mm(number(word))
		case "share":
			j.DefectShare = float64(number(word)) / 100
		case "objective":
			j.Objective = Objective(number(word))
		}
	}
	return j
}

// describe writes a plan as "2 of 3000: 997 997; 1 of …".
func describe(j Job, p Plan) string {
	var groups []string
	for _, g := range p.Groups() {
		text := fmt.Sprintf("%d of %s:", g.Count, j.Stocks[g.Stick.Stock].Label)
		for _, c := range g.Stick.Cuts {
			text += " " + j.Pieces[c.Piece].Label
		}
		groups = append(groups, text)
	}
	return strings.Join(groups, "; ")
}

// Kerfs by hand. Three pieces and the two kerfs between them:
//
//	1000+1000+992+2·4 = 3000: the stick to its end
//	3·997+2·4         = 2999: the last cut finds 1 mm, all of it sawdust
//	3·996+2·4         = 2996: the last cut takes just what is left
//	3·995+3·4         = 2997: 3 mm fall off
//	1000+1000+993+2·4 = 3001: too much for one stick
func TestKerf(t *testing.T) {
	for _, c := range []struct {
		job            string
		sticks         int
		kerfs, offcuts Length
	}{
		{"cut 2x1000 992 from 3000 kerf 4", 1, mm(8), 0},
		{"cut 3x997 from 3000 kerf 4", 1, mm(9), 0},
		{"cut 3x996 from 3000 kerf 4", 1, mm(12), 0},
		{"cut 3x995 from 3000 kerf 4", 1, mm(12), mm(3)},
		{"cut 2x1000 993 from 3000 kerf 4", 2, mm(12), mm(6000 - 2993 - 12)},
		{"cut 3000 from 3000 kerf 4", 1, 0, 0},
		{"cut 2999 from 3000 kerf 4", 1, mm(1), 0},
		{"cut 2x1500 from 3000", 1, 0, 0},
		{"cut 2x1500 from 3000 kerf 1", 2, mm(2), mm(2998)},
	} {
		p := solve(t, parse(t, c.job))
		if len(p.Sticks) != c.sticks || p.Sums.Kerfs != c.kerfs || p.Sums.Offcuts != c.offcuts || !p.Proven {
			t.Errorf("%s: %d sticks, kerfs %v, offcuts %v; want %d, %v, %v",
				c.job, len(p.Sticks), p.Sums.Kerfs, p.Sums.Offcuts, c.sticks, c.kerfs, c.offcuts)
		}
	}
}

// A stick of 3000 less 2·10 trim, 30 defect and 1 % of 3000 for defect gives 2920.
func TestAllowances(t *testing.T) {
	const allowances = " from 3000 kerf 4 trim 10 defect 30 share 1"
	p := solve(t, parse(t, "cut 1458 1458"+allowances))
	want := Sums{Bought: mm(3000), Cuts: mm(2916), Kerfs: mm(4), Trims: mm(20), Defects: mm(60)}
	if p.Sums != want {
		t.Errorf("sums are %+v, want %+v", p.Sums, want)
	}
	if s := p.Sticks[0]; s.Cuts[0].Start != mm(10) || s.Cuts[1].Start != mm(10+1458+4) {
		t.Errorf("cuts begin at %v and %v, want 10 mm and 1472 mm", s.Cuts[0].Start, s.Cuts[1].Start)
	}
	if p := solve(t, parse(t, "cut 1458 1459"+allowances)); len(p.Sticks) != 2 {
		t.Errorf("2917 mm and a kerf come from one stick that gives 2920 mm")
	}
}

// Plans by hand.
func TestBestPlans(t *testing.T) {
	for _, c := range []struct{ why, job, want string }{
		{"two lengths together cost 3200; 3600 alone 4000, and 2400 alone is too short",
			"cut 3500 2x1200 from 2400@1200 3600@2000", "1 of 3600: 3500; 1 of 2400: 1200 1200"},
		{"the dear metre in one long stick costs 1500, in two short ones 1600",
			"cut 2x2600 from 2700@800 6000@1500", "1 of 6000: 2600 2600"},
		{"the same for least length: 5400 is less than 6000",
			"cut 2x2600 from 2700@800 6000@1500 objective 2", "2 of 2700: 2600"},
		{"without one price the length counts",
			"cut 2x2600 from 2700 6000@1500", "2 of 2700: 2600"},
		{"the stick on hand costs nothing, but there is only one",
			"cut 3x2000 from 2400@0x1 2400@900", "2 of 2400: 2000; 1 of 2400: 2000"},
		{"4500 less two trims of 10 is too short for three, so 4800 is bought",
			"cut 6x1500 from 4500 4800 trim 10", "2 of 4800: 1500 1500 1500"},
		{"longest with longest leaves no place: 6+4, 5+5 and not 6 | 5+5 | 4",
			"cut 600 2x500 400 from 1000", "1 of 1000: 600 400; 1 of 1000: 500 500"},
		{"first fit takes three sticks for what two hold",
			"cut 2x44 2x24 2x32 from 100", "2 of 100: 44 32 24"},
		{"nothing to cut, nothing to buy", "cut 0x500 from 1000", ""},
		{"pieces of one length keep their own marks, in their order",
			"cut 500 2x500 from 1000", "1 of 1000: 500 500; 1 of 1000: 500"},
	} {
		j := parse(t, c.job)
		p := solve(t, j)
		if got := describe(j, p); got != c.want || !p.Proven {
			t.Errorf("%s (%s): %s, proven %v; want %s", c.job, c.why, got, p.Proven, c.want)
		}
	}
}

func TestErrors(t *testing.T) {
	for _, c := range []struct{ job, want string }{
		{"cut 3001 from 3000", `piece "3001" of 3001 mm is longer than the 3000 mm that the longest stick can give`},
		{"cut 2980 2981 from 3000 2400 trim 10", `piece "2981" of 2981 mm is longer than the 2980 mm that the longest stick can give`},
		{"cut 500", `piece "500" of 500 mm is longer than the 0 mm that the longest stick can give`},
		{"cut 500 from 3000 trim 1500", `piece "500" of 500 mm is longer than the 0 mm that the longest stick can give`},
		{"cut 3x2000 400 from 3000@1x2", `the sticks to be had do not give all the pieces: none is left for "2000" of 2000 mm`},
		{"cut 500 from 3000 objective 1", `stock "3000" has no price`},
		{"cut 500 from 3000 share 100", `defect share must be 0 or more and less than 1`},
		{"cut -5 from 3000", `piece "-5" must be longer than 0, and at most 1 km`},
		{"cut 20000x5 from 3000", `piece "5" must be wanted 0 to 10000 times` + "\nthe job has more than 10000 pieces"},
		{"cut 500 from 0 kerf -1", "kerf must be 0 or more, and at most 1 km\n" + `stock "0" must be longer than 0, and at most 1 km`},
	} {
		_, err := Solve(parse(t, c.job))
		if err == nil || err.Error() != c.want {
			t.Errorf("%s: error is %v\nwant %s", c.job, err, c.want)
		}
	}
}

func TestTooLongNamesThePiece(t *testing.T) {
	j := parse(t, "cut 500 3001 3002 from 3000")
	_, err := Solve(j)
	var e *TooLongError
	if !errors.As(err, &e) || e.Piece != j.Pieces[1] || e.Longest != mm(3000) {
		t.Errorf("error is %v, want one that names the piece of 3001 mm", err)
	}
	if !strings.Contains(err.Error(), `"3002"`) {
		t.Errorf("error is %v, want the other piece as well", err)
	}
}

// The largest and smallest numbers that Solve takes, together.
func TestExtremes(t *testing.T) {
	longest, shortest := Piece{"long", maxLength, 1}, Piece{"short", 1, maxPieces - 1}
	big := Stock{Length: maxLength, Priced: true, Price: maxPrice}
	tiny := Stock{Length: 1, Priced: true, Price: maxPrice}
	for n, j := range []Job{
		{Pieces: []Piece{longest, shortest}, Stocks: []Stock{big, tiny}},
		{Pieces: []Piece{longest, shortest}, Stocks: []Stock{big, tiny}, Objective: LeastLength},
		{Pieces: []Piece{longest, shortest}, Stocks: []Stock{big, tiny}, Kerf: maxLength},
		{Pieces: []Piece{{"long", maxLength, maxPieces}}, Stocks: []Stock{big}, Kerf: maxLength},
		{Pieces: []Piece{longest, shortest}, Stocks: []Stock{big, {Length: 7, Priced: true, Price: 1, Limit: 900}}},
	} {
		p := solve(t, j)
		if p.Bound <= 0 {
			t.Errorf("job %d: bound %d", n, p.Bound)
		}
	}
}

func TestMillimetres(t *testing.T) {
	for _, c := range []struct {
		mm   float64
		want Length
		text string
	}{
		{2400, 2_400_000, "2400 mm"},
		{3.175, 3175, "3.175 mm"}, // ⅛ in
		{0.0004, 0, "0 mm"},
		{1e300, -1, "-0.001 mm"},
	} {
		if got := Millimetres(c.mm); got != c.want || got.String() != c.text {
			t.Errorf("Millimetres(%v) = %d, %s; want %d, %s", c.mm, got, got, c.want, c.text)
		}
	}
}

func TestTotals(t *testing.T) {
	p := newTotals([]bin{{cost: 4}, {cost: 5}}, 20)
	for _, c := range []struct{ v, atLeast, below int64 }{
		{0, 0, -1}, {1, 4, 0}, {4, 4, 0}, {6, 8, 5}, {11, 12, 10}, {13, 13, 12}, {30, 30, 29},
	} {
		if a, b := p.atLeast(c.v), p.below(c.v); a != c.atLeast || b != c.below {
			t.Errorf("%d: next total %d, the one below %d; want %d, %d", c.v, a, b, c.atLeast, c.below)
		}
	}
}
