package quantity

import "testing"

func BenchmarkParse(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Parse(Flow, "1360 L/h"); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkParseMixedFraction(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Parse(Length, "1 1/2 in"); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkRefuse(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Parse(Flow, "1,200 gph"); err == nil {
			b.Fatal("accepted")
		}
	}
}

func BenchmarkString(b *testing.B) {
	b.ReportAllocs()
	q := Quantity{Flow, 1358.7654321 / 3.6e6, "L/h", ""}
	for b.Loop() {
		if q.String() == "?" {
			b.Fatal("not printed")
		}
	}
}

func BenchmarkFormat(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if Format(Flow, 1358.7/3.6e6, US) == "?" {
			b.Fatal("not shown")
		}
	}
}

func BenchmarkConvert(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, ok := Convert(Flow, 1358.7/3.6e6, "gal(US)/h"); !ok {
			b.Fatal("not converted")
		}
	}
}
