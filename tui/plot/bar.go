package plot

// Bar is a horizontal bar of so many cells, filled to a share from 0 to 1 and
// padded with blanks. A share above 1 fills it and ends with '>'; NaN counts as 0.
func Bar(share float64, cells int, charset Charset) string {
	return ""
}
