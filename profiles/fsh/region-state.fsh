Profile: FaceNeckRegionState
Parent: FaceNeckObservation
Id: face-neck-region-state
Title: "Examination of a region"
Description: "What became of a region: examined and normal, abnormal or seen in part, or not examined, or not there. What was not examined has no value, so that it can not be taken for normal."
* insert Examined
* code = $items#region-state
* value[x] only CodeableConcept
* value[x] from $state-set (required)
* dataAbsentReason from $state-reasons-set (required)
* interpretation 0..1
* insert Placed
* obeys fn-obs-2 and fn-rst-1 and fn-rst-2 and fn-rst-3

Invariant: fn-rst-1
Description: "Normal goes with the interpretation N, and no other state does"
Severity: #error
Expression: "value.ofType(CodeableConcept).coding.where(system = 'https://face-neck-fhir.example/fhir/CodeSystem/values' and code = 'state.normal').exists() = interpretation.coding.where(code = 'N').exists()"

Invariant: fn-rst-2
Description: "Abnormal goes with the interpretation A, and no other state does"
Severity: #error
Expression: "value.ofType(CodeableConcept).coding.where(system = 'https://face-neck-fhir.example/fhir/CodeSystem/values' and code = 'state.abnormal').exists() = interpretation.coding.where(code = 'A').exists()"

Invariant: fn-rst-3
Description: "What was not examined or is not there has a reason, what was examined a value"
Severity: #error
Expression: "value.ofType(CodeableConcept).coding.where(code = 'state.not-examined' or code = 'state.not-applicable').empty() and dataAbsentReason.coding.where(code = 'state.normal' or code = 'state.abnormal' or code = 'state.partial').empty()"
