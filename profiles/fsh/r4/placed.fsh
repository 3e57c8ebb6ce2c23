RuleSet: Placed
* bodySite 1..
