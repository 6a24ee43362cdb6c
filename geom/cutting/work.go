package cutting

// work counts what the search does, so that it ends after the same steps on
// every machine. A unit is about one node of a knapsack: some twenty nanoseconds.
type work struct{ left int64 }

func (w *work) spend(n int64) { w.left -= n }

func (w *work) done() bool { return w.left <= 0 }

const (
	// DefaultEffort is the work that Solve does at most where the job does not
	// say: about two hundredths of a second. Most jobs need a tenth of it; ten times as
	// much proves a few more of those with many lengths and uneven prices.
	DefaultEffort = 1_000_000

	// pivotsPerWork is how many multiplications in the simplex make a unit.
	pivotsPerWork = 40

	// knapsackNodes is how long one knapsack may search before it falls back on
	// a weaker bound. Those of timber need a few hundred.
	knapsackNodes = 20_000
)
