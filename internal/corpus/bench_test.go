package corpus_test

import (
	"context"
	"os"
	"path/filepath"
	"testing"
)

func benchmarkReview(b *testing.B, name string, remedies bool) {
	data, err := os.ReadFile(filepath.Join(start, systems, name))
	if err != nil {
		b.Fatal(err)
	}
	r, err := reviewer()
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if remedies {
			_, err = r.Review(context.Background(), name, data)
		} else {
			_, err = r.Judge(context.Background(), name, data)
		}
		if err != nil {
			b.Fatal(err)
		}
	}
}

// One file, all the way without remedies.
func BenchmarkDemo(b *testing.B) { benchmarkReview(b, "quarry-road.yaml", false) }

// One file with two dozen findings, whose remedies are all looked for.
func BenchmarkAsFound(b *testing.B) { benchmarkReview(b, "quarry-road-as-found.yaml", true) }
