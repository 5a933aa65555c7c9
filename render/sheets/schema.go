package sheets

import _ "embed"

// JSONSchema describes the document that JSON writes (JSON Schema 2020-12).
//
//go:embed schema.json
var JSONSchema []byte
