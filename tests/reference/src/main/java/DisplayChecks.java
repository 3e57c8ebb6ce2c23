import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.context.support.ConceptValidationOptions;
import ca.uhn.fhir.context.support.ValidationSupportContext;
import ca.uhn.fhir.util.FhirTerser;
import org.hl7.fhir.common.hapi.validation.support.InMemoryTerminologyServerValidationSupport;
import org.hl7.fhir.instance.model.api.IBase;
import org.hl7.fhir.instance.model.api.IBaseResource;

/** Codes of the loaded code systems and value sets, with their displays: a wrong display is an error. */
final class DisplayChecks extends InMemoryTerminologyServerValidationSupport {
    DisplayChecks(FhirContext context) {
        super(context);
        setIssueSeverityForCodeDisplayMismatch(IssueSeverity.ERROR);
    }

    // The instance validator passes the display but never asks for it to be looked at.
    @Override
    public CodeValidationResult validateCode(
            ValidationSupportContext chain, ConceptValidationOptions options,
            String system, String code, String display, String valueSet) {
        CodeValidationResult result =
            super.validateCode(chain, withDisplay(options), system, code, display, valueSet);
        return differsInCase(result, display) || isDesignation(chain, result, system, code, display)
            ? super.validateCode(chain, options, system, code, display, valueSet)
            : result;
    }

    @Override
    public CodeValidationResult validateCodeInValueSet(
            ValidationSupportContext chain, ConceptValidationOptions options,
            String system, String code, String display, IBaseResource valueSet) {
        CodeValidationResult result =
            super.validateCodeInValueSet(chain, withDisplay(options), system, code, display, valueSet);
        return differsInCase(result, display) || isDesignation(chain, result, system, code, display)
            ? super.validateCodeInValueSet(chain, options, system, code, display, valueSet)
            : result;
    }

    private static ConceptValidationOptions withDisplay(ConceptValidationOptions options) {
        return new ConceptValidationOptions().setInferSystem(options.isInferSystem()).setValidateDisplay(true);
    }

    // Upper and lower case make no other display; the library compares letter by letter.
    private static boolean differsInCase(CodeValidationResult result, String display) {
        return result != null && result.getSeverity() != null && display != null
            && display.equalsIgnoreCase(result.getDisplay());
    }

    // A display in another language is right where the code system designates it; the library knows one only.
    private boolean isDesignation(
            ValidationSupportContext chain, CodeValidationResult result,
            String system, String code, String display) {
        if (result == null || result.getSeverity() == null || system == null || display == null) return false;
        IBaseResource codeSystem = chain.getRootValidationSupport().fetchCodeSystem(system);
        if (codeSystem == null) return false;
        return designates(getFhirContext().newTerser(), codeSystem, code, display);
    }

    // Concepts stand below the concept that they are a case of.
    private static boolean designates(FhirTerser terser, IBase holder, String code, String display) {
        for (IBase concept : terser.getValues(holder, "concept")) {
            if (designates(terser, concept, code, display)) return true;
            if (!code.equals(terser.getSinglePrimitiveValueOrNull(concept, "code"))) continue;
            return terser.getValues(concept, "designation").stream()
                .anyMatch(one -> display.equals(terser.getSinglePrimitiveValueOrNull(one, "value")));
        }
        return false;
    }
}
