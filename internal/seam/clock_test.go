//go:build !linux

package seam

import "time"

var began = time.Now()

func clock() time.Duration { return time.Since(began) }
