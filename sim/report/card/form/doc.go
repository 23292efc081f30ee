// Package form is a form to take to the field, as a structure and as text, Markdown or
// HTML. It knows no rockets: whoever fills a [Page] decides what stands on it, in which
// units and words, and has taken control characters out of names.
//
// [WriteText] keeps to 80 columns and begins every page but the first with a form feed.
// [WriteMarkdown] writes tables and task lists as common hosts and editors show them.
// [WriteHTML] writes one file that needs nothing else: it reads on a telephone and
// prints every page on one sheet, A4 or US Letter, black on white. The size of its type
// follows from how much there is to print; from what will not fit at the least size, the
// sheet runs over.
package form
