package timecode_test

import (
	"fmt"

	"longhand/lang/timecode"
	"longhand/lang/units"
)

func ExampleCode() {
	rate, _ := units.ParseRate(29.97)
	code, err := timecode.New(rate, true)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(code.Label(1800))
	_, err = code.Parse("00:01:00;00")
	fmt.Println(err)
	// Output:
	// 00:01:00;02
	// the timecode "00:01:00;00" does not exist: drop-frame skips the first 2 labels of each minute but every tenth
}

func ExampleGauge_Runs() {
	film, _ := timecode.ParseGauge("35mm-4perf")
	fmt.Println(film.Runs(1000*units.Foot, units.Rate{Num: 24, Den: 1}).Clock())
	// Output: 11:06.7
}
