package system

// System is the typed view of a system file: only what dryfit works with. The
// document beside it holds everything that was written.
type System struct {
	Document    *Document
	Name        Word
	Status      Word // concept, for-review, as-built
	Site        Site
	Water       Water
	WorkingFlow Flow
	Vessels     []*Vessel // in file order
	Lines       []*Line   // in file order
	Pumps       []*Pump   // in file order
	Pipes       []*Pipe   // in file order
	Mains       Mains

	*reading
	vessels map[string]*Vessel
	lines   map[string]*Line
	pumps   map[string]*Pump
	pipes   map[string]*Pipe
}

// Site is where the loop stands.
type Site struct {
	Altitude Number
	Setting  Word
}

// Range is a number given once, or as low, usual and high. A value given once is all three.
type Range struct {
	Pointer          string
	Low, Usual, High Number
}

// Water is the water of the loop as its keeper holds it.
type Water struct {
	Temperature   Range
	PH            Range
	Alkalinity    Range
	Chloride      Range
	SaltTreatment Number // concentration of salt at the strongest treatment planned; `none` is given as zero
}

// Flow is what the keeper asks of the pump.
type Flow struct{ Least, Most Number }

// Vessel is anything with a water surface: tanks, settlers, filters, sumps, beds.
type Vessel struct {
	ID       string
	Pointer  string
	Role     Word
	Form     Form
	StandsAt Number // inner floor above the datum
	Material Word
	Running  Number // water/running: depth of water while the pump runs, above the inner floor
	Well     *Well  // nil if none
	Weir     *Weir  // nil if none
	Launder  *Launder
	Lid      Word       // what lies over it: lid/kind
	Fixings  []*Fixings // of the well, the weir, the lid, and its other fasteners
	SpillAt  Number     // lowest place over which water would leave, if that is not the rim
}

// Form is the inside of a vessel.
type Form struct {
	Pointer string
	Kind    string // "cylinder", "box", "cone-bottom" ... the key of the mapping
	Inside  Number // inside diameter of a cylinder
	Length  Number
	Width   Number
	Height  Number // from the inner floor to the rim; of a lying pipe, its inside
	Wall    Number
	// Of the other forms.
	ConeHeight Number // tip of the cone up to where the round part begins
	ConeOutlet Number // inside diameter at the tip
	InsideTop  Number // inside diameter at the rim, of a taper
	LengthTop  Number
	WidthTop   Number
	Area       Number // of a prism
	Slot       Number // opening along a lying pipe
	Volumes    []DepthVolume
}

// DepthVolume is one pair of depth and the volume below it.
type DepthVolume struct{ Depth, Volume Number }

// Well is the inlet well of a settler.
type Well struct {
	Pointer  string
	Inside   Number
	Outside  Number
	LipAt    Number
	ComesOut Switch
}

// Fixings are fasteners that hold a part.
type Fixings struct {
	Pointer string
	Grade   Word
	Count   Number
	Wetted  Switch // taken as wetted unless it says no
}

// Weir is the edge over which a vessel gives its water.
type Weir struct {
	Pointer string
	Kind    string // notched_ring, ring, side_pipe, notch, rim: the key of the mapping
	Across  Number // diameter of a ring
	CrestAt Number // lowest point of the edge
	Notches Number
	Angle   Number // of a notch
	Width   Number // of a rectangular notch
	Depth   Number // of a notch
	Length  Number // of a straight edge
	Holes   Number // of a ring with holes
	Bore    Number // of one of its holes
	At      Number // middle of the pipe of such a ring
}

// Launder is the channel behind a weir.
type Launder struct {
	Pointer string
	FloorAt Number
}

// Pump is one pump with its curve.
type Pump struct {
	ID       string
	Pointer  string
	Curve    []CurvePoint
	ShutOff  Number // shut_off: head at no flow
	OpenFlow Number // open_flow: flow at no head
	Draws    Number
	Supply   Word // mains, extra-low-voltage, ...
	DryBelow Number
}

// CurvePoint is one pair of flow and head.
type CurvePoint struct{ Flow, Head Number }

// Mains is the power supply from the wall.
type Mains struct {
	Pointer         string
	Given           bool
	ResidualCurrent Number // `none` is given as text; see Unprotected
	Unprotected     Word   // given when residual_current is the word none
	Circuits        Number
}

// End is where a line starts or stops.
type End struct {
	Pointer string
	Vessel  *Vessel // nil when the end is no vessel
	Part    string  // "well", "launder" ... of a vessel
	Line    *Line   // set when the end is a tee of another line
	Tee     string  // its id
	Outer   string  // "mains", "outside", "bucket"
}

// Line is the pieces from one end to another, in the order the water meets them.
type Line struct {
	ID      string
	Pointer string
	Duty    string // flow (when not said), waste, draw-down, overflow, top-up, vent, rain
	DutyAt  Word   // the leaf it comes from
	From    End
	To      End
	Carries Word
	Made    Word // `pipe`: the name of the pipe it is made of
	Joints  Word // of every piece that says nothing else
	Pieces  []*Piece
	Pumped  bool // a pump stands among its pieces

	from, to Word
}

// Piece is one step of a line. Exactly one of the pointers below Joint is set,
// the one that Kind names; a run is a rise, fall, across or slope.
type Piece struct {
	Line    *Line
	Index   int
	Pointer string
	Value   string // pointer of what stands under its one key
	Kind    string // the one key of its mapping
	Made    Word   // its own `pipe`, if it names one
	Pipe    *Pipe  // the pipe that it is made of or joined to; nil if the file names none
	Joint   Word   // its own `joint`, else the line's `joints`

	Intake     *Intake
	FloorDrain *FloorDrain
	Standpipe  *Standpipe
	BellSiphon *BellSiphon
	Run        *Run
	Bend       *Bend // bend and sweep
	Tee        *Tee
	Valve      *Valve
	Through    *Through
	Over       *Over
	Cuff       *Cuff
	Hose       *Hose
	Pump       *Pump
	Outlet     *Outlet
	// SiphonBreak is holes that let air in.
	SiphonBreak *SiphonBreak
	// ReducesTo is the pipe that follows a reducer.
	ReducesTo *Pipe

	Walk
	names Word // the pump or pipe that a pump or reducer names
}

// Walk is what the walk along the line works out for a piece. Heights are
// centrelines above the datum.
type Walk struct {
	From, To     Linear
	Length       Linear  // along the centreline; zero for fittings
	Fitted       bool    // its length was worked out to close the heights
	Direction    float64 // radians above the level in which the water moves on after it; NaN-free: see HasDirection
	HasDirection bool
	Turn         float64 // radians that the flow turns here: bends, and tees that turn
	In           *Vessel // the vessel it stands inside; nil outside
}

// Linear is a length or height as a sum of values of the file, each times a
// factor, so that it can be worked again with one of them replaced:
//
//	z = sum of factor * value
//
// The walk does its arithmetic on these sums (add, subtract, scale). Where a
// value is not given the sum is not known; its terms still name what is missing.
type Linear struct {
	Terms []Term
}

// Term is one value of the file times a factor.
type Term struct {
	Number Number
	Factor float64
}

type (
	// Intake is an open end that takes water in.
	Intake struct {
		At     Number
		Facing Word // up, down, level: the way the open end looks
		Guard  *Guard
	}
	// Guard keeps fish out of an intake.
	Guard struct {
		Slots, Width, Length Number // Width is also the diameter of a hole
		Holes, Area          Number // in place of slots
	}
	// FloorDrain is a drain that stands on the floor of a vessel on its foot.
	FloorDrain struct {
		Flange, Standoff, TailAt Number
		NearEdge, FootReach      Number // tail end to the near edge of the foot; near edge to the mouth's centre
		FeetCount, FootWidth     Number
		WeightInWater            Number
		Fixings                  *Fixings // screws that hold it; nil if none
	}
	// Standpipe is an upright pipe whose rim sets a level.
	Standpipe struct{ CrestAt Number }
	// BellSiphon is a standpipe under a bell, which empties a bed each time it is full.
	BellSiphon struct {
		CrestAt                     Number // rim of the standpipe inside
		Inside, TopAt, FootAt       Number // of the bell
		SnorkelInside, SnorkelEndAt Number
	}
	// SiphonBreak is holes that let air into a line.
	SiphonBreak struct{ Count, Bore, At Number }
	// Run is straight pipe: across, rise, fall or slope.
	Run struct {
		Length  Number
		Fit     bool   // the word fit stands for the length
		Angle   Number // slope: from the level
		Height  Number // slope: its rise or fall, when that is given and not the length
		Down    bool   // slope: falls in the direction of flow
		Clipped Switch
	}
	// Bend is a fitting that turns, sharp (bend) or round (sweep).
	Bend struct{ Angle, Radius Number }
	// Tee has a third way beside the two that the flow uses.
	Tee struct {
		ID    Word
		At    Number
		Way   Word // turn, through
		Third Word // vent, cap, line, air
		TopAt Number
		Count Number
		Every Number
	}
	// Valve may be open in part; its opening is a fraction, not given means open.
	Valve struct {
		Kind   Word
		Open   Number
		Bore   Number
		Locked Word
	}
	// Through is a pipe that goes through a wall or floor.
	Through struct {
		WallOf, FloorOf, LidOf Word // one of them is given

		Vessel   *Vessel
		At       Number
		Seal     string // seal, bulkhead, or empty
		Hole     Number
		Projects Number
	}
	// Over is the crossing of a rim.
	Over struct {
		RimOf  Word
		Vessel *Vessel
		At     Number
	}
	// Cuff is a rubber sleeve coupling.
	Cuff struct {
		Inside, Span, Wall, Hardness Number
		Clamps                       Word
	}
	// Hose is flexible and may turn and climb as it likes.
	Hose struct {
		Length, Inside Number
		Clamps         Word
	}
	// Outlet is the end from which the water leaves the line.
	Outlet struct {
		At     Number
		Facing Word // up, down, level
		Nozzle Number
		Cap    Word
		Holes  *Holes // when the water leaves by holes along the last run; else nil
	}
	// Holes are a row of holes along a pipe.
	Holes struct{ Count, Bore, Every Number }
)

// Pipe is a named pipe of the file, with its dimensions from the table of pipes.
type Pipe struct {
	ID       string
	Pointer  string
	Standard Word
	Class    Word
	Size     Word
	// What the file states itself goes before the table.
	StatedInside, StatedOutside, StatedWall Number
	// From the tables; zero and false when the pipe is not in them.
	Listed  bool
	Inside  float64 // mean, metres
	Outside float64
	Wall    float64
	Nominal float64 // nominal size in inches, for formulas that want it
	Source  string
}
