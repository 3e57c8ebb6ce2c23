"""One validator of Python in a process of its own; the same order and answer as peer.mjs."""

import json
import sys
import time


def fhirkit():
    import fhirkit

    def sound(text):
        try:
            return all(issue.severity != "error" for issue in fhirkit.validate(text))
        except (fhirkit.ParseError, fhirkit.ValidationError):
            return False

    return sound


def fhir_resources():
    # R4 of this library ends with 6.4; R4B differs from R4 in none of the types of the cases.
    from fhir.resources.R4B.bundle import Bundle
    from pydantic import ValidationError

    def sound(text):
        try:
            Bundle.model_validate_json(text)
            return True
        except (ValidationError, ValueError):
            return False

    return sound


PEERS = {"fhirkit-rs": fhirkit, "fhir.resources": fhir_resources}


def measured(sound, text, rounds):
    if not sound(text):
        raise SystemExit("refuses the bundle of the benchmark")
    start = time.perf_counter()
    sound(text)
    elapsed = max(0.01, (time.perf_counter() - start) * 1000)
    count = max(3, min(rounds, int(rounds / elapsed) + 1))
    found = []
    for at in range(count * 2):
        begin = time.process_time()
        sound(text)
        if at >= count:
            found.append((time.process_time() - begin) * 1000)
    return {"text": found, "rounds": count}


def main():
    name, file = sys.argv[1:3]
    with open(file, encoding="utf-8") as source:
        order = json.load(source)
    sound = PEERS[name]()
    cases = order["cases"]
    print(
        json.dumps(
            {
                "found": [one["id"] for one in cases["faults"] if not sound(one["text"])],
                "refused": [one["id"] for one in cases["sound"] if not sound(one["text"])],
                "small": measured(sound, order["small"]["text"], order["rounds"]),
                "large": measured(sound, order["large"]["text"], order["rounds"]),
            }
        )
    )


main()
