package report

import (
	"io"
	"math"
	"slices"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// Columns of a table of levels in time, counted from 0.
const (
	clockEnd   = 10
	courseWide = 9
	leastEnd   = 28
	mostEnd    = 48
	edgeEnd    = 65
	sketchAt   = 67
	mostSketch = 60
)

// courses is a course for each vessel that moves, round the loop, and those that stand still.
type courses struct {
	moving, still []working.Series
}

// Courses writes how the levels go in time, scene by scene.
func Courses(w io.Writer, s *system.System, list []working.Followed, o Options) error {
	p := newPage(&review.Review{System: s}, o)
	var lines []line
	for i, f := range list {
		if i > 0 {
			lines = append(lines, line{}, line{})
		}
		lines = append(lines, p.course(f, list[:i], o)...)
	}
	return write(w, lines, max(bodyWidth, o.Width), o.Colour)
}

// course is one scene in time; one that goes like another before it names that.
func (p *page) course(f working.Followed, before []working.Followed, o Options) []line {
	out := []line{line{}.add(strings.ToUpper(safe(sceneName(f.Scene))), waterInk)}
	out = append(out, paragraph(sentence(capital(caseHead(f.Case)+": "+sceneMeaning(f.Scene, p.System))), 0, bodyWidth)...)
	if why := p.gapsOfScene(f.Scene); why != "" {
		return append(append(out, line{}), paragraph("? It cannot be followed yet. "+sentence(capital(why)), 2, bodyWidth)...)
	}
	if len(f.Levels) == 0 || len(f.Levels[0].T) == 0 {
		return append(append(out, line{}), paragraph("There is no water in it to follow.", 2, bodyWidth)...)
	}
	if i := slices.IndexFunc(before, func(other working.Followed) bool { return sameCourse(f, other) }); i >= 0 {
		return append(append(out, line{}), paragraph("It goes as with "+sceneName(before[i].Scene)+".", 2, bodyWidth)...)
	}
	unit := "mm"
	if p.in == quantity.US {
		unit = "inches"
	}
	out = append(out, paragraph(p.lastedWords(f)+" Heights are "+unit+" above the datum.", 0, bodyWidth)...)
	c := p.coursesOf(f)
	if len(c.moving) > 0 {
		times := rowTimes(c.moving)
		for rest := c.moving; len(rest) > 0; {
			n := p.fit(rest, max(bodyWidth, o.Width))
			out = append(append(out, line{}), p.rowsInTime(rest[:n], times)...)
			rest = rest[n:]
		}
		out = append(append(out, line{}), p.extremes(c.moving, times, o)...)
	}
	if text := p.stillWords(c); text != "" {
		out = append(append(out, line{}), paragraph(text, 2, bodyWidth)...)
	}
	if len(f.Happened) > 0 {
		out = append(out, line{})
	}
	for _, h := range f.Happened {
		l := line{}.right(clock(h.At), clockEnd, noInk).at(clockEnd+3).add(p.happenedWords(h.What, []string{h.Subject}), noInk)
		out = append(out, l)
	}
	return out
}

// sameCourse says that two scenes of a loop come to the same, at every time.
func sameCourse(a, b working.Followed) bool {
	return slices.EqualFunc(a.Levels, b.Levels, func(a, b working.Series) bool {
		return slices.Equal(a.T, b.T) && slices.Equal(a.Y, b.Y)
	})
}

// lastedWords says how long a scene was followed and why it ended.
func (p *page) lastedWords(f working.Followed) string {
	t := f.Levels[0].T
	text := "Followed for " + clock(t[len(t)-1])
	switch {
	case f.Reason != "":
		return text + " and no further: " + f.Reason + "."
	case f.Still:
		return text + ", until all stood still."
	}
	return text + ", and it still moved then."
}

// coursesOf sorts the courses of the vessels, and of the store of the top-up, by
// whether they move. What stands behind a weir is left to other forms.
func (p *page) coursesOf(f working.Followed) courses {
	of := map[string]working.Series{}
	for _, c := range f.Levels {
		of[c.Subject] = c
	}
	var c courses
	take := func(name string) {
		course, there := of[name]
		low, high, still := 0.0, 0.0, sameLevel
		if there {
			low, high = rangeOf(course)
		}
		if p.isStore(name) {
			still = 0.01
		}
		switch {
		case !there:
		case high-low >= still:
			c.moving = append(c.moving, course)
		default:
			c.still = append(c.still, course)
		}
	}
	for _, stop := range p.System.Round() {
		if stop.Vessel != nil {
			take(stop.Vessel.ID)
		}
	}
	if p.isStore("store") {
		take("store")
	}
	return c
}

// isStore says that a course is what is left in the store of the top-up, as a share, and no level of a vessel.
func (p *page) isStore(subject string) bool {
	return subject == "store" && p.System.Vessel(subject) == nil
}

// fit is how many columns stand side by side.
func (p *page) fit(list []working.Series, columns int) int {
	end := clockEnd
	for i, c := range list {
		if end += p.columnOf(c); end > columns && i > 0 {
			return i
		}
	}
	return len(list)
}

func (p *page) columnOf(c working.Series) int {
	if p.isStore(c.Subject) {
		return courseWide + 1
	}
	return max(courseWide, min(width(safe(c.Subject)), 16)+2)
}

func (p *page) rowsInTime(list []working.Series, times []float64) []line {
	head := line{}.right("time", clockEnd, noInk)
	end := clockEnd
	for _, c := range list {
		end += p.columnOf(c)
		name := clip(safe(c.Subject), 16)
		if p.isStore(c.Subject) {
			name = "store, %"
		}
		head = head.right(name, end, noInk)
	}
	out := []line{head}
	for _, t := range times {
		l, end := line{}.right(clock(t), clockEnd, noInk), clockEnd
		for _, c := range list {
			end += p.columnOf(c)
			l = l.right(p.stands(c, atTime(c, t)), end, waterInk)
		}
		out = append(out, l)
	}
	return out
}

// stands is a level, or what is left in a store in percents.
func (p *page) stands(c working.Series, z float64) string {
	if p.isStore(c.Subject) {
		return fixed(math.Max(z, 0)*100, 0)
	}
	return heightShown(z, p.in)
}

// extremes is the least and greatest of each course with their times and, on a
// terminal, a small drawing of it.
func (p *page) extremes(list []working.Series, times []float64, o Options) []line {
	letters := min(max(bodyWidth, o.Width)-sketchAt, mostSketch)
	head := line{}.right("least", leastEnd, noInk).at(leastEnd+2).add("at", noInk).right("greatest", mostEnd, noInk).at(mostEnd+2).add("at", noInk).right("rim", edgeEnd, noInk)
	if o.Drawn {
		head = head.at(sketchAt).add("course", noInk)
	}
	out := []line{head}
	for _, c := range list {
		low, high := rangeOf(c)
		near := 0.0005
		if p.in == quantity.US {
			near = 0.05 * 0.0254
		}
		l := line{}.at(2).add(clip(safe(c.Subject), 17), noInk)
		l = l.right(p.stands(c, low), leastEnd, waterInk).at(leastEnd+2).add(clock(reachesAt(c, low, near)), noInk)
		l = l.right(p.stands(c, high), mostEnd, waterInk).at(mostEnd+2).add(clock(reachesAt(c, high, near)), noInk)
		if !p.isStore(c.Subject) {
			l = l.right(p.stands(c, c.Rim), edgeEnd, noInk)
		}
		if o.Drawn {
			l = l.at(sketchAt).add(sketch(c, times, letters), waterInk)
		}
		out = append(out, l)
	}
	return out
}

// stillWords says where the vessels stand that do not move.
func (p *page) stillWords(c courses) string {
	var names []string
	for _, s := range c.still {
		if p.isStore(s.Subject) {
			names = append(names, "the store at "+p.stands(s, s.Y[0])+" %")
			continue
		}
		names = append(names, s.Subject+" at "+p.stands(s, s.Y[0]))
	}
	switch {
	case len(names) == 0:
		return ""
	case len(c.moving) == 0:
		return "Nothing moves: " + series(names, "and") + "."
	}
	return "The rest does not move: " + series(names, "and") + "."
}

// SceneList writes what can be followed in time in one loop, each with what it means.
func SceneList(w io.Writer, s *system.System, scenes []working.Scene, k working.Catalogue, o Options) error {
	most := pageWidth(o)
	var out []line
	for i, sc := range scenes {
		if i == 0 || sc.Case != scenes[i-1].Case {
			if i > 0 {
				out = append(out, line{})
			}
			title := caseHead(sc.Case)
			if j := slices.IndexFunc(k.Cases, func(n working.Named) bool { return n.Name == sc.Case }); j >= 0 {
				title = k.Cases[j].Title
			}
			out = append(out, labelled(sc.Case, sentence(capital(title)), 0, 18, most, waterInk)...)
		}
		out = append(out, labelled(sc.Fault, sceneMeaning(sc, s), pageText, 34, most, noInk)...)
	}
	if len(scenes) > 0 {
		first := scenes[0]
		out = append(out, line{}, line{}.add("for example", noInk), line{}.at(pageText).add("dryfit levels FILE --case "+first.Case+" --fault '"+first.Fault+"'", noInk))
	} else {
		out = paragraph("There is no water in this loop to follow.", 0, most)
	}
	return write(w, out, most, o.Colour)
}
