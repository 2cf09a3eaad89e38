package measure_test

import (
	"testing"

	"quiltrun/planner/measure"
)

func BenchmarkParse(b *testing.B) {
	for _, text := range []string{"8", "8 1/2", "8½″", "20,5 cm", "1 1/4 yards"} {
		b.Run(text, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := measure.Parse(text, measure.Inches); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkString(b *testing.B) {
	for name, l := range map[string]measure.Length{"eighths": 8*in + in/8, "millimetres": 205 * mm, "one tick": 8*in + 1} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				_ = l.String()
			}
		})
	}
}

func BenchmarkShow(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		_ = (8*in + in/3).Show(measure.Inches)
	}
}

func BenchmarkAreaSum(b *testing.B) {
	var sum measure.Area
	for b.Loop() {
		sum = sum.Add(measure.Mul(2*in+in/2, 3*in))
	}
}

func BenchmarkTimesRoot2(b *testing.B) {
	for b.Loop() {
		_ = (7*in + in/4).TimesRoot2(measure.Up)
	}
}

func BenchmarkScale(b *testing.B) {
	for b.Loop() {
		_ = (90 * in).Scale(100, 95, measure.Up)
	}
}
