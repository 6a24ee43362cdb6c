//go:build !(darwin || dragonfly || freebsd || linux || netbsd || openbsd)

package main

// lockFolder does nothing on systems where a folder cannot be locked. Each file
// is whole all the same; only two sets drawn at once may mix.
func lockFolder(string) (unlock func(), alone bool) { return func() {}, false }
