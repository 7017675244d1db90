package corpus_test

import (
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"testing"

	"dryfit/internal/system"
)

// The loops that others are varied from: those that a club would have, small and middling.
var seeds = []string{"quarry-road", "common-drum", "inch-loop", "lifting-overflow", "bottom-drain", "two-settlers", "siphon-beds", "gravity-raft", "pump-in-tank"}

var corpusTo = flag.String("corpus-to", "", "with -run WriteCorpus, the folder to write a corpus of -corpus-size varied system files into")
var corpusSize = flag.Int("corpus-size", 0, "files of the corpus; else 1000 to write, 60 to measure")

// sized is how many files were asked for, else so many.
func sized(otherwise int) int {
	if *corpusSize > 0 {
		return *corpusSize
	}
	return otherwise
}

// one is a system file of a corpus.
type one struct {
	name string
	data []byte
}

var measure = regexp.MustCompile(`^([0-9]+(?:\.[0-9]+)?)( .+)?$`)

// varied makes a corpus of n system files from a seed: each is one of the sound loops with up to six of its
// numbers made smaller or larger by up to a fifth, and still valid; one in fifty is broken. The same seed makes the same files.
func varied(t testing.TB, n int, seed uint64) []one {
	t.Helper()
	var from []*system.System
	for _, name := range seeds {
		data, err := os.ReadFile(systems + name + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		s, problems := system.Read(name+".yaml", data)
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		from = append(from, s)
	}
	var out []one
	for i := range n {
		r := rand.New(rand.NewPCG(seed, uint64(i)))
		s := from[i%len(from)]
		data := vary(r, s)
		if i%50 == 49 {
			data = data[:len(data)/2+r.IntN(len(data)/4)]
		}
		out = append(out, one{fmt.Sprintf("class-%02d/loop-%04d.yaml", i%20, i), data})
	}
	return out
}

// vary changes some numbers of a system, one after the other, as long as the file stays valid.
func vary(r *rand.Rand, s *system.System) []byte {
	leaves := s.NotLooked() // nobody has looked at a file that was only read
	changes := r.IntN(7)
	data := s.Document.YAML()
	var edits []system.Edit
	for tries := 0; len(edits) < changes && tries < 60; tries++ {
		leaf := leaves[r.IntN(len(leaves))]
		text, _ := s.Document.Text(leaf.Pointer())
		m := measure.FindStringSubmatch(text)
		if m == nil || leaf.Pointer() == "/dryfit" {
			continue
		}
		x, err := strconv.ParseFloat(m[1], 64)
		if err != nil || x == 0 {
			continue
		}
		x *= 0.8 + 0.4*r.Float64()
		edit := system.Edit{Op: system.Set, Pointer: leaf.Pointer(), Value: strconv.FormatFloat(x, 'g', 3, 64) + m[2]}
		if m[2] == "" {
			edit.Value = x
		}
		try := append(edits[:len(edits):len(edits)], edit)
		if _, problems := s.Edited(try...); len(problems) > 0 {
			continue
		}
		if changed, problems := s.Document.WithEdits(try...); len(problems) == 0 {
			edits, data = try, changed
		}
	}
	return data
}

// writeCorpus writes a corpus into a folder.
func writeCorpus(t testing.TB, folder string, files []one) {
	t.Helper()
	for _, f := range files {
		path := filepath.Join(folder, f.name)
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, f.data, 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

// go test ./internal/corpus -run WriteCorpus -corpus-to FOLDER makes a corpus to try commands on.
func TestWriteCorpus(t *testing.T) {
	folder := *corpusTo
	n := sized(1000)
	if folder == "" {
		folder, n = t.TempDir(), 20
	}
	writeCorpus(t, folder, varied(t, n, 7))
}
