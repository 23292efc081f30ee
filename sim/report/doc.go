// Package report turns a flight into what people and programs read: findings
// with their verdicts, sentences for warnings, the text report, JSON and CSV.
// The screen and the commands share it, so both say the same in the same words.
package report
