//go:build darwin || dragonfly || freebsd || linux || netbsd || openbsd

package main

import (
	"os"
	"syscall"
)

// lockFolder waits until no other run writes into dir. The lock is on the
// folder itself, so it leaves no file behind and ends with the process, however
// that ends. Where the disk knows no locks alone is false: each file is whole
// all the same, only two sets drawn at once may mix.
func lockFolder(dir string) (unlock func(), alone bool) {
	f, err := os.Open(dir)
	if err != nil {
		return func() {}, false
	}
	if err := syscall.Flock(int(f.Fd()), syscall.LOCK_EX); err != nil {
		f.Close()
		return func() {}, false
	}
	return func() { f.Close() }, true
}
