package marking

import (
	"dryfit/internal/review"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// Marked is what came of one submission.
type Marked struct {
	Number   int    // in the order of the class, from one: what it is called where names do not belong
	Name     string // of its file in the folder, without the ending
	File     string
	Hash     string // SHA-256 of its content
	Unread   string // why it could not be read at all
	Fault    string // why it was not marked: what of dryfit itself broke, or the time that it took; no marks then
	Late     bool   // it was the time
	Problems []system.Problem
	LeftOut  []string       // pointers of values that were left out so that the rest could be marked
	Judged   bool           // the loop could be worked out, at least in part
	Review   *review.Review // nil where it could not, and once the class is counted
	Lines    []Line         // one for each item of the guide, in its order
	Caps     []Capped       // those that hold, the lowest first
	Sum      float64        // of the items, bonus with them, before any cap
	Total    float64        // what it comes to
	Was      *float64       // the total before it was changed by hand; nil where it was not
	Changed  *Moderation    // of the total
	Gains    []Gain         // at most three, the greatest first
	NoGains  string         // why none could be looked for; else empty
	Departs  []string       // keys of the starter whose values are others here, or gone
}

// Line is one item with its marks.
type Line struct {
	Item    *Item
	Marks   float64
	Reasons []string    // why, in sentences without their full stop
	Worked  *Worked     // of a stated value; else nil
	Was     *float64    // before it was changed by hand; nil where it was not
	Changed *Moderation // by hand
	Lost    []string    // what is missing or not met: ids of clauses, keys of the file
}

// Worked is a stated value beside what is worked out.
type Worked struct {
	Text     string // as the student writes it
	Working  string // the student's own words
	Place    system.Place
	X        *float64 // in SI units; nil where it cannot be read as a number
	NoUnit   bool     // the unit of the guide was taken
	BadUnit  bool
	Node     *working.Node // the number that it is held against
	Right    *float64      // from the student's own inputs
	Carried  *float64      // from what the student stated before; nil where nothing was carried, or it was not needed
	From     []Upstream    // which values those were
	Doubtful bool          // right only within the range in which the sources leave it
	Band     int           // the band reached, from zero; -1 for none
	Slips    []Slip        // that explain the number, where it is wrong
	Standing string        // subject and state in words of the address
}

// Upstream is a stated value that another one depends on.
type Upstream struct {
	Node    *working.Node // nil once the class is counted
	Address string
	Text    string // as the student writes it
	X       float64
}

// Slip is a likely mistake that leads to the number.
type Slip struct {
	Name  string  // one of [SlipNames]
	Words string  // what was likely done: "the radius was taken for the diameter of the settler"
	X     float64 // what the working comes to with it
}

// Capped is a cap that holds, with the clauses that are not met.
type Capped struct {
	Cap   *Cap
	Among []*review.Judgement
}

// Gain is one change and the marks that it would bring.
type Gain struct {
	Marks   float64
	Do      string
	UpTo    bool           // it may gain up to so much; how much, can only be said once it is done
	After   bool           // it brings them once no cap holds the mark down
	Item    *Item          // that it is about; nil for a cap
	Remedy  *review.Remedy // of the book; nil where it is none
	Finding *review.Finding
}

// Moderation is a mark that was changed by hand.
type Moderation struct {
	Submission string // name of its file in the folder, without the ending
	Item       string // empty for the total
	Marks      float64
	Reason, By string
	On         string // day, year first; may be empty
	Hash       string // of the submission that was looked at; may be empty
	Pointer    string
	Place      system.Place
	Stale      bool // the submission is another one than was looked at
}
