package corpus_test

import (
	"context"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"testing"

	"dryfit/internal/corpus"
	"dryfit/internal/report"
)

func benchmarkReview(b *testing.B, name string, remedies bool) {
	data, err := os.ReadFile(filepath.Join(start, systems, name))
	if err != nil {
		b.Fatal(err)
	}
	benchmarkReviewOf(b, name, data, remedies)
}

func benchmarkReviewOf(b *testing.B, name string, data []byte, remedies bool) {
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

// The largest loop that a file may describe, without remedies.
func BenchmarkCrowded(b *testing.B) {
	benchmarkReviewOf(b, "crowded.yaml", []byte(manifold(94)), false)
}

// found is the files of a corpus of n, written anew.
func found(b *testing.B, n int) []corpus.File {
	b.Helper()
	b.Chdir(start)
	folder := b.TempDir()
	writeCorpus(b, folder, varied(b, n, 7))
	files, err := corpus.Find([]string{folder})
	if err != nil {
		b.Fatal(err)
	}
	return files
}

// takeAll reviews files and writes them in some forms, as one call of the program does.
func takeAll(b *testing.B, files []corpus.File, batch corpus.Batch, forms ...string) {
	b.Helper()
	r, err := reviewer()
	if err != nil {
		b.Fatal(err)
	}
	var writers []report.Writer
	for _, form := range forms {
		w, err := report.NewWriter(form, io.Discard, called(b, report.Options{Width: 80}))
		if err != nil {
			b.Fatal(err)
		}
		writers = append(writers, w)
		batch.Whole = batch.Whole || report.WantsAll(form)
	}
	batch.AsOf = "2026-03-14"
	err = r.Run(context.Background(), files, batch, func(i report.Item) error {
		if i.Fault != "" || i.Unread != "" {
			return fmt.Errorf("%s: %s%s", i.File, i.Fault, i.Unread)
		}
		for _, w := range writers {
			if err := w.Add(i); err != nil {
				return err
			}
		}
		return nil
	})
	for _, w := range writers {
		if err := w.Close(); err != nil {
			b.Fatal(err)
		}
	}
	if err != nil {
		b.Fatal(err)
	}
}

// The first run over a corpus, nothing kept yet: files a second, and by how much the heap grows at most.
func BenchmarkCorpus(b *testing.B) {
	files := found(b, sized(60))
	for _, workers := range []int{1, 2} {
		b.Run(fmt.Sprintf("workers-%d", workers), func(b *testing.B) { firstRun(b, files, workers) })
	}
}

// The same over few files and over many: the memory that it takes should not depend on it.
func BenchmarkCorpusMemory(b *testing.B) {
	for _, n := range []int{60, 240} {
		files := found(b, n)
		b.Run(fmt.Sprintf("files-%d", n), func(b *testing.B) { firstRun(b, files, 2) })
	}
}

func firstRun(b *testing.B, files []corpus.File, workers int) {
	most := uint64(0)
	for b.Loop() {
		cache := cacheIn(b, b.TempDir())
		most = max(most, peak(func() { takeAll(b, files, corpus.Batch{Workers: workers, Cache: cache}, "text", "sarif", "markdown") }))
	}
	b.ReportMetric(float64(len(files)*b.N)/b.Elapsed().Seconds(), "files/s")
	b.ReportMetric(float64(most)/1e6, "MB")
}

// The next run over the same corpus, all of whose results are kept: what is to be acted on, and everything.
func BenchmarkCorpusKept(b *testing.B) {
	files := found(b, sized(60))
	cache := cacheIn(b, b.TempDir())
	takeAll(b, files, corpus.Batch{Workers: 2, Cache: cache}, "text")
	for _, c := range []struct {
		name  string
		forms []string
	}{{"acted", []string{"text", "sarif", "markdown"}}, {"json", []string{"json"}}} {
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				takeAll(b, files, corpus.Batch{Workers: 2, Cache: cache}, c.forms...)
			}
			b.ReportMetric(float64(len(files)*b.N)/b.Elapsed().Seconds(), "files/s")
		})
	}
}
