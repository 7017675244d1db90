package report

import (
	"strings"

	"dryfit/internal/review"
)

// fate is what became of one file, in words that follow a number of files.
type fate string

// The fates. Those that set the exit status come first.
const (
	gotWorse   fate = "got worse somewhere"
	newAndOpen fate = "IS new with something open in it"
	notRead    fate = "cannot be read"
	otherwise  fate = "IS changed and nowhere worse"
	readAgain  fate = "can be read again"
	asBefore   fate = "IS as IT WAS"
	stillNot   fate = "still cannot be read"
	onlyMoved  fate = "IS moved and else as IT WAS"
	newAndDone fate = "IS new"
	gone       fate = "IS gone"
)

var fates = []fate{gotWorse, newAndOpen, notRead, otherwise, readAgain, asBefore, stillNot, onlyMoved, newAndDone, gone}

// words fits a fate to the number of files that met it.
func (f fate) words(n int) string {
	was := "they were"
	if n == 1 {
		was = "it was"
	}
	return strings.NewReplacer("IT WAS", was, "IS", are(n)).Replace(string(f))
}

func (c Compared) fate() fate {
	switch status := c.Status(); {
	case c.Now.Absent:
		return gone
	case status == review.Unreadable:
		return notRead
	case status == review.Act && c.New != nil:
		return newAndOpen
	case status == review.Act:
		return gotWorse
	case c.Now.unreadable():
		return stillNot
	case c.Was.Absent:
		return newAndDone
	case c.Was.unreadable():
		return readAgain
	case !c.Same && c.Comparison != nil && !c.Comparison.Nothing():
		return otherwise
	case c.From != "":
		return onlyMoved
	}
	return asBefore
}

// fateWords is what is said of a file before what was compared, or in its place.
func (c Compared) fateWords() string {
	var out []string
	if c.From != "" {
		out = append(out, "It was moved; it was "+c.From+".")
	}
	switch c.fate() {
	case gone:
		out = append(out, map[bool]string{true: "It is on neither side.", false: "It is gone."}[c.Was.Absent])
	case newAndDone:
		out = append(out, "It is new: there is nothing to hold it against. No shall stands open in it.")
	case newAndOpen:
		out = append(out, "It is new: there is nothing to hold it against. What stands open in it counts as worse.")
	case readAgain:
		out = append(out, "It could not be reviewed before, and can be now.")
	case stillNot:
		out = append(out, "It is the same on both sides, letter for letter, and can be reviewed on neither.")
	default:
		if c.Same {
			out = append(out, "It is the same on both sides, letter for letter.")
		}
	}
	return strings.Join(out, " ")
}

// shownVersions is the versions of which it is said what is wrong with them: of two that are
// wrong alike the present one, and none that is no more.
func (c Compared) shownVersions() []Version {
	switch {
	case c.Now.Absent || c.fate() == readAgain:
		return nil
	case c.Same:
		return []Version{c.Now}
	}
	return []Version{c.Was, c.Now}
}
