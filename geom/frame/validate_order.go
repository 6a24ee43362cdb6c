package frame

// fewNails is the number of nails in a strap below which it is warned of.
// Common practice, no source.
const fewNails = 6

// checkStraps looks at the straps of the rafters.
func (c *checker) checkStraps() {
	s, r := c.job.Rafters.Strap, c.job.Rafters.Section
	if s.Width == 0 {
		return
	}
	if s.Width > r.Width+slack {
		c.warnf(RuleStraps, "rafters.straps", "the straps are %s wide and the rafters %s: a strap must lie on its rafter with its whole width", c.figure(s.Width), c.figure(r.Width))
	}
	if s.Nails < fewNails {
		c.warnf(RuleStraps, "rafters.straps", "each strap has %d nails; common practice, without a source, is at least %d", s.Nails, fewNails)
	}
}
