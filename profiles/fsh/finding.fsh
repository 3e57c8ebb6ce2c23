Profile: FaceNeckFinding
Parent: FaceNeckObservation
Id: face-neck-finding
Title: "Finding of a face and neck examination"
Description: "A sign that was looked for at a place. The code names the sign, the value says whether it is there: a sign that was not seen is absent and has no reason for a missing value. The interpretation says the same to readers who know no other code; a second one says whether a sign that is the usual appearance is as it should be."
* insert Examined
* code from $findings-set (extensible)
* value[x] 1..
* value[x] only CodeableConcept
* value[x] from $presence-set (required)
* dataAbsentReason 0..0
* interpretation 1..2
* interpretation from FaceNeckPresenceInterpretation (required)
* insert Placed
* obeys fn-fin-1 and fn-fin-2

Invariant: fn-fin-1
Description: "Present goes with the interpretation POS, and no other value does"
Severity: #error
Expression: "value.ofType(CodeableConcept).coding.where(system = 'https://face-neck-fhir.example/fhir/CodeSystem/values' and code = 'presence.present').exists() = interpretation.coding.where(code = 'POS').exists()"

Invariant: fn-fin-2
Description: "Absent goes with the interpretation NEG, and no other value does"
Severity: #error
Expression: "value.ofType(CodeableConcept).coding.where(system = 'https://face-neck-fhir.example/fhir/CodeSystem/values' and code = 'presence.absent').exists() = interpretation.coding.where(code = 'NEG').exists()"

ValueSet: FaceNeckPresenceInterpretation
Id: presence-interpretation
Title: "Interpretations of a sign"
Description: "Positive, negative or indeterminate: presence and absence of what the code names."
* insert Published
* $interpretation#POS
* $interpretation#NEG
* $interpretation#IND
* $interpretation#N
* $interpretation#A
