package sim

import (
	"go/ast"
	"go/parser"
	"go/token"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"
)

// WarningCodes lists every constant of its type.
func TestWarningCodesAreAll(t *testing.T) {
	file, err := parser.ParseFile(token.NewFileSet(), "warning.go", nil, 0)
	require.NoError(t, err)
	var codes []WarningCode
	ast.Inspect(file, func(n ast.Node) bool {
		spec, ok := n.(*ast.ValueSpec)
		if !ok {
			return true
		}
		if kind, ok := spec.Type.(*ast.Ident); ok && kind.Name == "WarningCode" {
			code, err := strconv.Unquote(spec.Values[0].(*ast.BasicLit).Value)
			require.NoError(t, err)
			codes = append(codes, WarningCode(code))
		}
		return true
	})
	require.ElementsMatch(t, codes, WarningCodes())
}
