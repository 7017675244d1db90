package loop

// Cases in which something has gone wrong, or is done by hand.
const (
	OneBlocked    = "one_blocked"
	Stopped       = "stopped"
	Restart       = "restart"
	OpenJoint     = "open_joint"
	DrainLeftOpen = "drain_left_open"
	AllBedsDrain  = "all_beds_drain"
	Rain          = "rain"
	TopupStuck    = "topup_stuck"
	WrongValve    = "wrong_valve"
	Cleaning      = "cleaning"
	Unattended    = "unattended"
)
