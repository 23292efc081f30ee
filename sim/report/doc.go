// Package report turns flights and studies into what people and programs read: findings
// with their verdicts, sentences for warnings, text, JSON and CSV. It formats what it is
// given and flies nothing. The screen and the commands share it, so both say the same in
// the same words.
package report
