package crew

import (
	"os"
	"testing"

	"flitchlay/internal/roomtest"
)

// BenchmarkInstall draws the install set of rooms with many pages.
func BenchmarkInstall(b *testing.B) {
	for _, name := range []string{"reading-room", "corridor", "cannot-meet"} {
		b.Run(name, func(b *testing.B) {
			text, err := os.ReadFile("../../samples/" + name + ".toml")
			if err != nil {
				b.Fatal(err)
			}
			p := roomtest.PlanOf(b, name, text)
			t := roomtest.Template(b, "ansi-a")
			for b.Loop() {
				if _, err := Install(p, t); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
