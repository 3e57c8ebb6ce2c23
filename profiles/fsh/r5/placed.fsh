// In R5 a body structure takes the place of the site: obs-8 forbids both.
RuleSet: Placed
* obeys fn-place

Invariant: fn-place
Description: "A statement about a place has it as a site or as a body structure"
Severity: #error
Expression: "bodySite.exists() or bodyStructure.exists()"
