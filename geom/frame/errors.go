package frame

import (
	"fmt"

	"plumbcut/geom/frame/keys"
)

// What is wrong with a job file is reported as package keys does it.
type (
	Pos    = keys.Pos
	Error  = keys.Error
	Errors = keys.Errors
	Rule   = keys.Rule
)

// RuleOrder is what Read adds to the rules of package keys: ends before it
// starts, or not from left to right. The rules of the timber are beside the
// code that checks them.
const RuleOrder Rule = "order"

// Errorf makes an error at the place of a path in the job file; see Job.Pos.
// The message says what is wrong and, after a semicolon, what would be right.
func (j *Job) Errorf(rule Rule, path, format string, args ...any) Error {
	return Error{File: j.File, Pos: j.Pos(path), Rule: rule, Msg: fmt.Sprintf(format, args...)}
}

// quote repeats a text of the job in a message.
func quote(s string) string { return keys.Quote(s) }

// spoken is a path as people say it.
func spoken(path string) string { return keys.Spoken(path) }
