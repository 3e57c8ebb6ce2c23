Profile: FaceNeckObservation
Parent: Observation
Id: face-neck-observation
Title: "Observation of a face and neck examination"
Description: "What every observation of an examination has: the identifier by which it is known again, who was examined, who observed, and a code with words. It tells something: a value, a reason why there is none, components or members."
* insert Published
* identifier 1..
* category 1..1
* category from http://hl7.org/fhir/ValueSet/observation-category (required)
* code.text 1..
* subject 1..
* subject only Reference(Patient)
* issued 1..
* performer 1..
* performer only Reference(Practitioner or PractitionerRole)
* bodySite from $regions-set (extensible)
* bodySite.text 1..
* obeys fn-obs-1

Invariant: fn-obs-1
Description: "An observation tells a value, a reason why there is none, components or members"
Severity: #error
Expression: "value.exists() or dataAbsentReason.exists() or component.exists() or hasMember.exists()"

// An observation of a statement, which has its time.
RuleSet: Examined
* insert Published
* category = $category#exam
* effective[x] 1..
* effective[x] only dateTime or Period
* hasMember 0..0

Invariant: fn-obs-2
Description: "Either a value or a reason why there is none"
Severity: #error
Expression: "value.exists() xor dataAbsentReason.exists()"
