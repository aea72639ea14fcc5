package seam

import (
	"syscall"
	"time"
)

// clock returns the processor time this thread has used: other programs on the machine do not count.
func clock() time.Duration {
	const thread = 1 // RUSAGE_THREAD of getrusage(2)
	var use syscall.Rusage
	if err := syscall.Getrusage(thread, &use); err != nil {
		panic(err)
	}
	return time.Duration(use.Utime.Nano() + use.Stime.Nano())
}
