package tracker

import "math"

// Trend is the straight line that fits values best, taken at even steps or at
// given places, by least squares.
type Trend struct {
	N         int
	Mean      float64 // of the values
	Spread    float64 // their standard deviation, n - 1 in the divisor; 0 for one value
	Start     float64 // the line at 0
	Slope     float64
	SlopeSE   float64 // the slope's standard error; 0 for fewer than three values
	Residuals float64 // standard deviation about the line, n - 2 in the divisor
}

// Steady fits values that were taken one after another: the slope is their
// change from one to the next.
func Steady(values []float64) Trend {
	places := make([]float64, len(values))
	for i := range places {
		places[i] = float64(i)
	}
	return Fit(places, values)
}

// Fit fits values y at places x. Sums go over what is left of the means, so that
// values which differ in their last digits only keep them.
func Fit(x, y []float64) Trend {
	t := Trend{N: len(y)}
	if t.N == 0 {
		return t
	}
	meanX := mean(x)
	t.Mean = mean(y)
	var xx, xy, yy float64
	for i := range y {
		dx, dy := x[i]-meanX, y[i]-t.Mean
		xx, xy, yy = xx+dx*dx, xy+dx*dy, yy+dy*dy
	}
	if t.N > 1 {
		t.Spread = math.Sqrt(yy / float64(t.N-1))
	}
	if xx == 0 {
		t.Start = t.Mean
		return t
	}
	t.Slope = xy / xx
	t.Start = t.Mean - t.Slope*meanX
	if t.N < 3 {
		return t
	}
	var rest float64
	for i := range y {
		off := (y[i] - t.Mean) - t.Slope*(x[i]-meanX)
		rest += off * off
	}
	t.Residuals = math.Sqrt(rest / float64(t.N-2))
	t.SlopeSE = t.Residuals / math.Sqrt(xx)
	return t
}

// mean is taken twice: the second pass takes off what the first rounded.
func mean(values []float64) float64 {
	var sum, rest float64
	for _, v := range values {
		sum += v
	}
	m := sum / float64(len(values))
	for _, v := range values {
		rest += v - m
	}
	return m + rest/float64(len(values))
}

// student is the factor on a standard error beyond which a slope of n values is
// no chance in nineteen cases of twenty: Student's t, two-sided 95 %, for n - 2
// degrees of freedom (NIST/SEMATECH e-Handbook of Statistical Methods, table
// 1.3.6.7.2). Between the degrees of the table the next lower one counts.
func student(n int) float64 {
	table := []struct {
		degrees int
		t       float64
	}{
		{1, 12.706}, {2, 4.303}, {3, 3.182}, {4, 2.776}, {5, 2.571}, {6, 2.447}, {7, 2.365}, {8, 2.306}, {9, 2.262},
		{10, 2.228}, {12, 2.179}, {15, 2.131}, {20, 2.086}, {30, 2.042}, {60, 2.000}, {100, 1.984},
	}
	t := math.Inf(1)
	for _, row := range table {
		if n-2 >= row.degrees {
			t = row.t
		}
	}
	return t
}
