Profile: FaceNeckTest
Parent: FaceNeckObservation
Id: face-neck-test
Title: "Movement or function test"
Description: "A movement that was asked for and its grade, or a reflex, hearing or similar test and its result. A test that was not done has a reason in place of its result."
* insert Examined
* code from $test-points-set (extensible)
* value[x] only CodeableConcept
* value[x] from $test-results-set (required)
* obeys fn-obs-2
