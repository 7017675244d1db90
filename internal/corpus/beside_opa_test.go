package corpus_test

import (
	"context"
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"runtime"
	"sync"
	"testing"

	"dryfit/internal/judge"
	"dryfit/internal/survey"
	"dryfit/internal/system"
	"dryfit/internal/working"
	"dryfit/rules"
)

var documents = flag.String("documents", "", "with -bench BesideOPA, the folder to write what Rego sees of every loop into")
var loops = flag.Int("loops", 1000, "with -bench BesideOPA, how many loops to judge")

const atOnceHeld = 8 // ledgers

// BenchmarkBesideOPA is our side of testdata/speed/beside-opa.sh: it loads the book and judges
// varied loops, as many at a time as there are cores. To work them out and to write their
// documents is not counted. A few are held at a time, and garbage gathers as in the program.
func BenchmarkBesideOPA(b *testing.B) {
	if *documents == "" {
		b.Skip("name a folder with -documents, or run testdata/speed/beside-opa.sh")
	}
	data, err := os.ReadFile(systems + "quarry-road.yaml")
	if err != nil {
		b.Fatal(err)
	}
	demo, problems := system.Read("quarry-road.yaml", data)
	if len(problems) > 0 {
		b.Fatal(problems)
	}
	room := make([]byte, 96<<20)
	defer runtime.KeepAlive(room)
	for b.Loop() {
		book := judge.Open(survey.Catalogue(), rules.Book)
		book.InputSchema() // waits until it is loaded
		judgements := 0
		for first := 0; first < *loops; first += atOnceHeld {
			b.StopTimer()
			ledgers := make([]*working.Ledger, min(atOnceHeld, *loops-first))
			found := make([]int, len(ledgers))
			atOnce(len(ledgers), func(i int) {
				s, problems := system.Read("varied.yaml", vary(rand.New(rand.NewPCG(11, uint64(first+i))), demo))
				if len(problems) > 0 {
					b.Error(problems)
					s = demo
				}
				ledgers[i] = survey.Survey(s)
				text, err := book.Input(ledgers[i])
				if err == nil {
					err = os.WriteFile(filepath.Join(*documents, fmt.Sprintf("%04d.json", first+i)), text, 0o644)
				}
				if err != nil {
					b.Error(err)
				}
			})
			b.StartTimer()
			atOnce(len(ledgers), func(i int) {
				all, _, err := book.Judge(context.Background(), ledgers[i])
				if err != nil {
					b.Error(err)
				}
				found[i] = len(all)
			})
			for _, n := range found {
				judgements += n
			}
		}
		b.ReportMetric(float64(judgements), "judgements")
	}
}

// atOnce does n things, as many at a time as there are cores.
func atOnce(n int, do func(i int)) {
	next := make(chan int)
	var workers sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		workers.Go(func() {
			for i := range next {
				do(i)
			}
		})
	}
	for i := range n {
		next <- i
	}
	close(next)
	workers.Wait()
}
