package water_test

import (
	"fmt"

	"dryfit/internal/water"
)

// IAPWS SR6-08(2011), table of check values: 889.996774 uPa s at 298.15 K.
func ExampleDynamicViscosity() {
	mu, v := water.DynamicViscosity(298.15)
	fmt.Printf("%.6f uPa s, %v\n", mu*1e6, v)
	// Output: 889.996774 uPa s, in the valid range
}

// IAPWS R7-97(2012), table 35: 0.353658941e-2 MPa at 300 K.
func ExampleVapourPressure() {
	p, v := water.VapourPressure(300)
	fmt.Printf("%.5f Pa, %v\n", p, v)
	// Output: 3536.58941 Pa, in the valid range
}
