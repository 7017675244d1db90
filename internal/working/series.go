package working

// Series is a curve: a quantity of one subject in time.
type Series struct {
	Subject, Name string
	T, Y          []float64 // s, and SI
	Rim           float64   // of a level: where it spills
}

// Followed is a scene as it goes in time: a level of every vessel and a flow of
// every line, all at the same times, and what happened when.
type Followed struct {
	Scene
	Levels, Flows []Series
	Happened      []Happened
	Still         bool   // nothing changes any more at the end
	Missing       []Gap  // why it could not be followed; then there is no series
	Reason        string // why it ended before its time, if it did
}

// Happened is one thing in a scene and its time, s.
type Happened struct {
	At      float64
	Subject string
	What    string // spills, draws-air
}
