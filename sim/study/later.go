package study

import "errors"

var errLater = errors.New("study: not there yet")
