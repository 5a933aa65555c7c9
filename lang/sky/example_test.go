package sky_test

import (
	"fmt"

	"longhand/lang/sky"
	"longhand/lang/units"
)

func ExampleTriesIn() {
	place := sky.Place{Lat: 56.05, Lon: 12.69}
	day := sky.Day{Year: 2026, Month: 8, Day: 20, Zone: 2 * 3600}
	window, err := sky.WindowOf("civil-dusk", place, day)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(window.Text(day))
	tries := sky.TriesIn(window, 5*60, 11*60)
	fmt.Println(tries.Count(), "tries, the last to start by", day.Clock(tries.Last))
	fmt.Println(units.Number(sky.Fall(place, window), 1), "stops")
	// Output:
	// 20:35 to 21:16
	// 3 tries, the last to start by 21:11
	// -7.1 stops
}
