package geom

import "testing"

var benchPath = NewCurved(Vec{0, 0}, Vec{4, 0}, Vec{4, 4}, Vec{0, 9}, Vec{3, 3})

func BenchmarkPathAt(b *testing.B) {
	b.ReportAllocs()
	step := benchPath.Length() / 1000
	i := 0
	for b.Loop() {
		benchPath.At(float64(i) * step)
		if i++; i == 1000 {
			i = 0
		}
	}
}

func BenchmarkPathHeading(b *testing.B) {
	b.ReportAllocs()
	step := benchPath.Length() / 1000
	i := 0
	for b.Loop() {
		benchPath.Heading(float64(i) * step)
		if i++; i == 1000 {
			i = 0
		}
	}
}

func BenchmarkNewCurved(b *testing.B) {
	for b.Loop() {
		NewCurved(Vec{0, 0}, Vec{4, 0}, Vec{4, 4}, Vec{0, 9}, Vec{3, 3})
	}
}
