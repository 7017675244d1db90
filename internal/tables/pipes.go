package tables

import (
	"cmp"
	"io/fs"
	"math"
	"regexp"
	"slices"
	"strings"
)

// Pipe is a pipe of a standard; lengths in metres.
type Pipe struct {
	Standard, Class, Size string
	Material              string // PVC-U, PE100
	Outside               float64
	OutsideLeast          float64
	OutsideMost           float64
	Wall                  float64 // mean
	WallLeast             float64
	Inside                float64 // mean: for hydraulics
	InsideMost            float64 // of the widest outside and the least wall: for what must pass or slide in
	NominalIn             float64 // nominal size in inches, for formulas that want it
	Origin
}

func (t *Tables) readPipes(files fs.FS) error {
	t.pipeAt, t.classes = map[string]int{}, map[string][]Pipe{}
	err := each(files, "pipes.csv", "standard class size material outside_mm outside_least_mm outside_most_mm wall_mm wall_least_mm inside_mm inside_most_mm nominal_in", func(r row) {
		p := Pipe{
			Standard: r.text("standard"), Class: r.text("class"), Size: r.text("size"), Material: r.text("material"),
			Outside: r.milli("outside_mm"), OutsideLeast: r.milli("outside_least_mm"), OutsideMost: r.milli("outside_most_mm"),
			Wall: r.milli("wall_mm"), WallLeast: r.milli("wall_least_mm"),
			Inside: r.milli("inside_mm"), InsideMost: r.milli("inside_most_mm"),
			NominalIn: r.positive("nominal_in"), Origin: r.origin(),
		}
		k := r.key(pipeKey(p.Standard, p.Class, p.Size))
		r.ordered("outside least, mean, most", p.OutsideLeast, p.Outside, p.OutsideMost)
		r.ordered("wall least, mean", p.WallLeast, p.Wall)
		r.ordered("inside mean, most, outside", p.Inside, p.InsideMost, p.OutsideMost)
		if math.Abs(p.Outside-2*p.Wall-p.Inside) > 0.11e-3 || math.Abs(p.OutsideMost-2*p.WallLeast-p.InsideMost) > 0.01e-3 {
			r.wrong("outside less two walls is not the inside")
		}
		t.pipeAt[k] = len(t.pipes)
		t.pipes = append(t.pipes, p)
		class := pipeKey(p.Standard, p.Class, "")
		t.classes[class] = append(t.classes[class], p)
	})
	for _, pipes := range t.classes {
		slices.SortStableFunc(pipes, func(a, b Pipe) int { return cmp.Compare(a.Inside, b.Inside) })
	}
	return err
}

var (
	edition    = regexp.MustCompile(`(-\d+\w?)?(:\d{4}.*)?$`) // part and year after a standard's number
	betweenFig = regexp.MustCompile(`(\d)[ -]+(\d)`)
	size       = regexp.MustCompile(`^(?:dn)?(\d+)(?:mm)?$`)
)

// pipeKey folds what an author may write in several ways: capitals, spaces,
// the part and year of a standard, `1 1/4 in` and `1-1/4 in`, `DN40` and `40 mm`.
func pipeKey(standard, class, dn string) string {
	return standardKey(standard) + "\t" + fold(class) + "\t" + size.ReplaceAllString(fold(dn), "$1")
}

func standardKey(s string) string { return edition.ReplaceAllString(fold(s), "") }

func fold(s string) string {
	s = betweenFig.ReplaceAllString(strings.TrimSpace(s), "$1-$2")
	return strings.Join(strings.Fields(strings.ToLower(s)), "")
}

// Pipe finds a pipe by standard, class and size.
func (t *Tables) Pipe(standard, class, size string) (Pipe, bool) {
	i, ok := t.pipeAt[pipeKey(standard, class, size)]
	if !ok {
		return Pipe{}, false
	}
	return t.pipes[i], true
}

// Standards lists the standards of pipe in the order of the table.
func (t *Tables) Standards() []string {
	return distinct(t.pipes, func(p Pipe) string { return p.Standard })
}

// Classes lists the classes of a standard; none if there is no such standard.
func (t *Tables) Classes(standard string) []string {
	return distinct(t.pipes, func(p Pipe) string {
		if standardKey(p.Standard) != standardKey(standard) {
			return ""
		}
		return p.Class
	})
}

// Sizes lists the sizes of a class, smallest bore first.
func (t *Tables) Sizes(standard, class string) []string {
	return distinct(t.PipesOf(standard, class), func(p Pipe) string { return p.Size })
}

// PipesOf lists the pipes of a class, smallest bore first.
func (t *Tables) PipesOf(standard, class string) []Pipe {
	return slices.Clone(t.classes[pipeKey(standard, class, "")])
}

// NextLarger finds the pipe with the next bore up in the same standard and class.
func (t *Tables) NextLarger(p Pipe) (Pipe, bool) {
	for _, q := range t.PipesOf(p.Standard, p.Class) {
		if q.Inside > p.Inside {
			return q, true
		}
	}
	return Pipe{}, false
}

// distinct lists what name gives for each item, once, without empty names.
func distinct[T any](items []T, name func(T) string) []string {
	var names []string
	for _, item := range items {
		if n := name(item); n != "" && !slices.Contains(names, n) {
			names = append(names, n)
		}
	}
	return names
}
