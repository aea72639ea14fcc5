package seam

import "fmt"

// Solve is in its plain form here.
func Solve(span Span, aim Aim) (Layout, error) {
	if span.Snap <= 0 {
		return Layout{}, fmt.Errorf("snap %d is not above nought", span.Snap)
	}
	out, ok := plainSolve(span, aim)
	if !ok {
		return Layout{}, fmt.Errorf("no layout from %d to %d", span.L, span.R)
	}
	out.Score = span.Score(out.Seams, out.Closing)
	return out, nil
}
