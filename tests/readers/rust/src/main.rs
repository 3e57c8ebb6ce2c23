//! Reads bundles with fhirbolt and writes them again, one line of JSON for each.
//!
//! Standard input: `{"id", "version": "R4"|"R4B"|"R5", "format": "json"|"xml", "text"}`. Standard
//! output: `{"id", "json", "xml"}` with the bundle as read and written in both formats, or
//! `{"id", "error"}` where it is not taken. Strict mode: a property that the version does not define
//! is an error.

use fhirbolt::element::Element;
use fhirbolt::{FhirRelease, FhirReleases};
use serde_json::{json, Value};
use std::io::{self, BufRead, Write};

type Read = Result<(String, String), Box<dyn std::error::Error>>;

fn read_and_write<const R: FhirRelease>(text: &str, xml: bool) -> Read {
    let bundle: Element<R> = if xml {
        fhirbolt::xml::from_str(text, None)?
    } else {
        fhirbolt::json::from_str(text, None)?
    };
    Ok((
        fhirbolt::json::to_string(&bundle, None)?,
        fhirbolt::xml::to_string(&bundle, None)?,
    ))
}

fn answer(request: &Value) -> Read {
    let text = request["text"].as_str().ok_or("no text")?;
    let xml = request["format"] == "xml";
    match request["version"].as_str() {
        Some("R4") => read_and_write::<{ FhirReleases::R4 }>(text, xml),
        Some("R4B") => read_and_write::<{ FhirReleases::R4B }>(text, xml),
        Some("R5") => read_and_write::<{ FhirReleases::R5 }>(text, xml),
        _ => Err("no version".into()),
    }
}

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let mut output = io::stdout().lock();
    for line in io::stdin().lock().lines() {
        let request: Value = serde_json::from_str(&line?)?;
        let id = &request["id"];
        let told = match answer(&request) {
            Ok((json, xml)) => json!({ "id": id, "json": json, "xml": xml }),
            Err(error) => json!({ "id": id, "error": error.to_string() }),
        };
        writeln!(output, "{told}")?;
    }
    Ok(())
}
