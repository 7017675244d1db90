package corpus_test

import (
	"fmt"
	"runtime"
	"testing"

	"dryfit/internal/corpus"
	"dryfit/internal/report"
)

// What is written does not depend on how many cores there are, nor on how many workers share them.
func TestOneCoreAndTwoGiveTheSameBytes(t *testing.T) {
	files, look := folderOf(t, 4), report.Options{Width: 80}
	want := everyForm(t, files, corpus.Batch{Whole: true}, look)
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(0))
	for _, cores := range []int{1, 2} {
		runtime.GOMAXPROCS(cores)
		for _, workers := range []int{1, 8} {
			same(t, fmt.Sprintf("%d cores, %d workers", cores, workers), everyForm(t, files, corpus.Batch{Whole: true, Workers: workers}, look), want)
		}
	}
}
