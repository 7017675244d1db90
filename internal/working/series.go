package working

// Scene is a fault or a piece of work that was followed in time: its quantities
// stand at addresses with its case and fault.
type Scene struct {
	Case, Fault string
	Subject, At string     // whom it is about: a line, a valve, a vessel; and where that stands in the file
	Reached     []Reached  // of each vessel
	Happened    []Happened // in the order of time
	Reason      string     // why it ended before its time, if it did
	Lasted      float64    // s that it was followed, where that is known: then over zero
	Missing     []Gap      // why it could not be followed; then nothing is known of it
}

// Reached is the levels of a vessel in a scene, all above the datum.
type Reached struct {
	Subject                  string
	Began, Most, Least, Ends float64
	Rim                      float64
}

// Happened is one thing in a scene and its time, s.
type Happened struct {
	At      float64
	Subject string
	What    string // spills, draws-air
	OrLater bool   // not sooner: the time is that of the first of several vessels
}

// Spills and DrawsAir are what may happen in a scene: water runs over the rim of
// a vessel, or a pump draws air with the water that it takes from one.
const (
	Spills   = "spills"
	DrawsAir = "draws-air"
)

// Series is a curve: a quantity of one subject in time.
type Series struct {
	Subject, Name string
	T, Y          []float64 // s, and SI
	Rim           float64   // of a level: where it spills
}

// Followed is a scene as it goes in time: a level of every vessel and a flow of
// every line, all at the same times.
type Followed struct {
	Scene
	Levels, Flows []Series
	Still         bool // nothing changes any more at the end
}
