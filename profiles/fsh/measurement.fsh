Profile: FaceNeckMeasurement
Parent: FaceNeckObservation
Id: face-neck-measurement
Title: "Measurement of a face and neck examination"
Description: "A quantity in a unit of UCUM at a place, with every reading that it came from."
* insert Examined
* code from $measures-set (extensible)
* value[x] only Quantity
* valueQuantity.value 1..
* valueQuantity.system 1..
* valueQuantity.system = $ucum (exactly)
* valueQuantity.code 1..
* insert Placed
* component ^slicing.discriminator.type = #value
* component ^slicing.discriminator.path = "code"
* component ^slicing.rules = #open
* component contains reading 0..*
* component[reading].code = $items#reading
* component[reading].value[x] 1..
* component[reading].value[x] only Quantity
