Profile: FaceNeckSensation
Parent: FaceNeckObservation
Id: face-neck-sensation
Title: "Sensation at a point"
Description: "How each kind of touch was felt at a point of one side, as components. A kind that was not tested has a reason in place of its value."
* insert Examined
* code from $test-points-set (extensible)
* value[x] 0..0
* dataAbsentReason 0..0
* insert Placed
* component 1..
* component ^slicing.discriminator.type = #value
* component ^slicing.discriminator.path = "code"
* component ^slicing.rules = #open
* component contains modality 1..*
* component[modality].code from $modalities-set (required)
* component[modality].value[x] only CodeableConcept
* component[modality].value[x] from $sensation-results-set (required)
* component[modality] obeys fn-obs-2

Profile: FaceNeckSensationComparison
Parent: FaceNeckObservation
Id: face-neck-sensation-comparison
Title: "Comparison of sensation between the sides"
Description: "What the patient said of both sides, touched one after the other."
* insert Examined
* code = $items#sensation-comparison
* value[x] only CodeableConcept
* value[x] from $comparison-set (required)
* insert Placed
* obeys fn-obs-2
