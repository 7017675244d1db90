package making

import (
	"slices"
	"strings"

	"dryfit/internal/system"
	"dryfit/internal/tables"
	"dryfit/internal/working"
)

// Book is the lists that a builder takes to the shed: what to cut, to drill, to join and to buy.
// Lengths are in metres.
type Book struct {
	Cuts     []Cut      // one for each straight run of pipe, in the order of the file
	Bars     []Bar      // the cuts laid on stock lengths, pipe by pipe
	Unlaid   []string   // pipes of which so many pieces are wanted that no bars are listed
	Holes    []Hole     // in the order of the file
	Joints   []Joint    // in the order of assembly
	Parts    []Part     // in the order of the build steps, then of the file
	Choices  []Choice   // seal against bulkhead, for each hole
	Money    []Money    // what is still to be paid, one for each currency, as far as prices are known
	Unpriced int        // lines of Parts that cost something and have no price: while it is above nought, Money is a least
	Steps    []Subtotal // the same by build step
	Uses     []Subtotal // the same by use
	Missing  []string   // pointers of what the file would have to say for the lists to be whole, each once
}

// Figure is a number that may be unknown: then its value is zero and Why says what is wanting.
type Figure struct {
	working.Value
	Known bool
	Why   string
}

// In is the side of a vessel that a hole is in.
type In string

// The sides of a vessel.
const (
	InWall  In = "wall"
	InFloor In = "floor"
	InLid   In = "lid"
)

// Hole is one hole to drill.
type Hole struct {
	Vessel, Line, Piece             string // ids; Piece as "riser/3"
	Count                           int    // more than one where vessels stand side by side alike
	In                              In
	At, Round                       Figure  // of a wall: middle above the inner floor; angle, clockwise seen from above, from the front
	Across, AcrossLeast, AcrossMost float64 // what the file says, else the table; what the seal or fitting takes; zero where unknown
	Fit                             string  // seal, bulkhead, or empty
	Tool                            string  // the nearest saw that is sold, in words
	Saw, Leaves                     Figure  // its size, and the hole that it leaves when held by hand
	Pipe                            string
	Lip                             Figure // outside diameter of the seal's lip or the fitting's flange
	ToEdge, ToNext                  Figure // from the lip to the nearest of rim, floor, rib and corner; to the lip of the nearest hole
	Sagitta, Wall                   Figure // how far a round wall falls away across it; thickness of the wall, to be held against the plug
	Measured                        bool   // the wall was measured at a plug
}

// Joint is one joint to make.
type Joint struct {
	Line, Piece   string
	Before, After string // what it joins, in words
	Kind          string // cemented, pinned, uncemented ...; empty where the file does not say
	Order         int    // from one, over the whole loop
	Count         int    // more than one where vessels stand side by side alike, or tees in a row
	ComesApart    bool
	Head          Figure // greatest depth of water that can stand over it, or press on it from the pump; below zero it stays dry
	Cure          string // how long its cement wants before water, in words; empty for other joints
	Note          string
}

// Got says how a part comes to the shed.
type Got string

// The ways to get a part.
const (
	Buy  Got = "buy"
	Make Got = "make"
	Find Got = "find" // used: a drum with a history
	Have Got = "have"
)

// Part is one line of the list of parts.
type Part struct {
	Name, Spec   string
	Use, Step    string  // id of the line, vessel, pump or stand, or a plain word; one of BuildSteps
	Count        float64 // how many it takes; of packs and stock lengths, whole ones
	Length       float64 // of each, where it is cut from a length; else zero
	Volume       float64 // of all of it, m3, where that is what is bought: cement; else zero
	Got          Got
	Each, Sum    Money  // Sum is what is still to be paid
	At           string // pointer of the file
	Alternatives []string
}

// Choice is the ways to take a pipe through a wall.
type Choice struct {
	Hole string // id of the piece
	Ways []Way
}

// Way is one of them.
type Way struct {
	Name, Needs, Risk   string // Name: seal, bulkhead
	Cost                Money
	Hole                Figure // that it wants
	WallLeast, WallMost Figure // that it takes
	Gap                 Figure // how far a round wall falls away under it
	Known               bool   // a seal or fitting of this size is in the tables
	Chosen              bool   // the file has it so
}

// Money is an amount in a currency (ISO 4217).
type Money struct {
	Amount   float64
	Currency string
	Known    bool
}

// Subtotal is what one use or build step costs.
type Subtotal struct {
	Name     string
	Sums     []Money
	Unpriced int // lines that cost something and have no price
}

// Lists works out the lists of the shed from a system and what was worked out about it.
func Lists(s *system.System, t *tables.Tables, l *working.Ledger) Book {
	b := &lister{surveyor: surveyor{System: s, t: t, l: l}}
	b.cutList()
	b.barList()
	b.holeList()
	b.jointList()
	b.choiceList()
	b.partList()
	b.sums()
	return b.Book
}

// lister fills a book.
type lister struct {
	surveyor
	Book
	prices   []price
	items    []item
	cemented []bond
}

// figure is what a node comes to. What it wants from the file is missing from the lists.
func (b *lister) figure(n *working.Node) Figure {
	if v, ok := n.Value(); ok {
		return Figure{Value: v, Known: true}
	}
	var whys []string
	for _, g := range n.Gaps() {
		why := g.Why
		if why == "" {
			why = "the file does not say " + g.Pointer
		}
		if g.Pointer != "" {
			b.want(g.Pointer)
		}
		if !slices.Contains(whys, why) {
			whys = append(whys, why)
		}
	}
	return Figure{Why: strings.Join(whys, "; ")}
}

// found is what the ledger has under a name of a subject, in every case.
func (b *lister) found(subject, name string) Figure {
	n := b.l.Find(always(subject, name))
	if n == nil {
		return Figure{Why: "it was not worked out"}
	}
	return b.figure(n)
}

// want enters what the file would have to say, once.
func (b *lister) want(pointer string) {
	if !slices.Contains(b.Missing, pointer) {
		b.Missing = append(b.Missing, pointer)
	}
}

// exactly is a figure without spread.
func exactly(x float64) Figure { return Figure{Value: working.Exactly(x), Known: true} }

func unsaid(why string) Figure { return Figure{Why: why} }

// alike is how many of a line there are: vessels that stand side by side are piped alike.
func (b *lister) alike(line *system.Line) int {
	n := 1
	for _, end := range []system.End{line.From, line.To} {
		if end.Vessel != nil {
			n = max(n, b.count(end.Vessel.Pointer+"/count"))
		}
	}
	return n
}
