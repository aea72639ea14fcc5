package finding

// Code names a finding.
type Code string
