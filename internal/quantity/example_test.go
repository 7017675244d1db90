package quantity_test

import (
	"fmt"

	"dryfit/internal/quantity"
)

func ExampleParse() {
	q, _ := quantity.Parse(quantity.Concentration, "40 mg/L CaCO3")
	fmt.Println(q, q.SI, q.Basis)

	_, err := quantity.Parse(quantity.Flow, "600 gph")
	fmt.Println(err)
	// Output:
	// 40 mg/L CaCO3 0.04 CaCO3
	// "600 gph": gph does not say which gallon; write 600 gal(US)/h or 600 gal(imp)/h
}

func ExampleFormat() {
	q, _ := quantity.Parse(quantity.Flow, "1360 L/h")
	fmt.Println(quantity.Format(quantity.Flow, q.SI, quantity.Metric))
	fmt.Println(quantity.Format(quantity.Flow, q.SI, quantity.US))
	fmt.Println(quantity.FormatIn(quantity.Flow, q.SI, "L/min", 3))
	// Output:
	// 1360 L/h
	// 359 gal(US)/h
	// 22.7 L/min
}
