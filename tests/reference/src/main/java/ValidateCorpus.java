import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.context.support.DefaultProfileValidationSupport;
import ca.uhn.fhir.validation.FhirValidator;
import ca.uhn.fhir.validation.ResultSeverityEnum;
import ca.uhn.fhir.validation.SingleValidationMessage;
import ca.uhn.fhir.validation.ValidationOptions;
import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.hl7.fhir.common.hapi.validation.support.CommonCodeSystemsTerminologyService;
import org.hl7.fhir.common.hapi.validation.support.PrePopulatedValidationSupport;
import org.hl7.fhir.common.hapi.validation.support.SnapshotGeneratingValidationSupport;
import org.hl7.fhir.common.hapi.validation.support.ValidationSupportChain;
import org.hl7.fhir.common.hapi.validation.validator.FhirDefaultPolicyAdvisor;
import org.hl7.fhir.common.hapi.validation.validator.FhirInstanceValidator;
import org.hl7.fhir.r5.elementmodel.Element;
import org.hl7.fhir.r5.model.ElementDefinition;
import org.hl7.fhir.r5.model.StructureDefinition;
import org.hl7.fhir.r5.utils.validation.IMessagingServices;
import org.hl7.fhir.r5.utils.validation.IResourceValidator;
import org.hl7.fhir.r5.utils.validation.constants.BestPracticeWarningLevel;
import org.hl7.fhir.r5.utils.validation.constants.ReferenceValidationPolicy;
import org.hl7.fhir.utilities.validation.ValidationMessage;
import org.hl7.fhir.validation.instance.advisor.BasePolicyAdvisorForFullValidation;

/**
 * HL7's instance validator over a whole corpus in one process, without network.
 *
 * <p>Arguments: {@code --load R4=FOLDER}, any number of times, adds definitions to one version.
 * Each line of standard input is {@code {"id", "version": "R4"|"R4B"|"R5", "text": "..." or "resource": {...},
 * "format": "json"|"xml", "profiles": [...]}}; each gives one line of output, in the same order:
 * {@code {"id", "valid", "issues": [{"severity", "location", "message", "messageId"}]}}. Only
 * {@code text} keeps duplicate properties and the spelling of the source. A line that cannot be
 * read gives an issue of severity {@code fatal}.
 */
public final class ValidateCorpus {
    enum Version {
        R4 { FhirContext context() { return FhirContext.forR4(); } },
        R4B { FhirContext context() { return FhirContext.forR4B(); } },
        R5 { FhirContext context() { return FhirContext.forR5(); } };

        abstract FhirContext context();
    }

    private final Map<Version, List<Path>> folders = new EnumMap<>(Version.class);
    private final Map<Version, FhirValidator> validators = new EnumMap<>(Version.class);

    public static void main(String[] args) throws IOException {
        PrintStream results = new PrintStream(System.out, false, StandardCharsets.UTF_8);
        // The libraries print to standard output in places; results must stand there alone.
        System.setOut(System.err);
        ValidateCorpus corpus = new ValidateCorpus();
        try {
            corpus.readArguments(args);
        } catch (IllegalArgumentException e) {
            System.err.println(e.getMessage());
            System.exit(2);
        }
        BufferedReader lines = new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
        for (String line = lines.readLine(); line != null; line = lines.readLine()) {
            if (line.isBlank()) continue;
            results.print(corpus.validateLine(line) + "\n");
            results.flush();
        }
    }

    private void readArguments(String[] args) {
        for (int i = 0; i < args.length; i += 2) {
            String[] parts = i + 1 < args.length ? args[i + 1].split("=", 2) : new String[0];
            if (!args[i].equals("--load") || parts.length != 2) {
                throw new IllegalArgumentException("usage: ValidateCorpus [--load R4|R4B|R5=FOLDER]...");
            }
            folders.computeIfAbsent(Version.valueOf(parts[0]), v -> new ArrayList<>()).add(Path.of(parts[1]));
        }
    }

    private JsonObject validateLine(String line) {
        JsonObject result = new JsonObject();
        JsonArray issues = new JsonArray();
        try {
            JsonObject request = JsonParser.parseString(line).getAsJsonObject();
            result.add("id", request.get("id"));
            for (SingleValidationMessage message : validate(request)) issues.add(issueOf(message));
        } catch (UncheckedIOException e) {
            // A folder of definitions that cannot be read is the caller's mistake and no finding.
            throw e;
        } catch (OutOfMemoryError e) {
            throw e;
        } catch (RuntimeException | Error e) {
            // Some faults of a text the library meets with an Error of its own.
            issues.add(issue("fatal", "", e.getClass().getSimpleName() + ": " + e.getMessage(), "unreadable"));
        }
        boolean valid = true;
        for (JsonElement found : issues) {
            String severity = found.getAsJsonObject().get("severity").getAsString();
            valid = valid && !severity.equals("error") && !severity.equals("fatal");
        }
        result.addProperty("valid", valid);
        result.add("issues", issues);
        return result;
    }

    private List<SingleValidationMessage> validate(JsonObject request) {
        Version version = Version.valueOf(request.get("version").getAsString());
        JsonElement text = request.get("text");
        JsonElement resource = request.get("resource");
        if (text == null && resource == null) throw new JsonParseException("neither text nor resource");
        ValidationOptions options = new ValidationOptions();
        JsonArray profiles = request.getAsJsonArray("profiles");
        if (profiles != null) profiles.forEach(profile -> options.addProfile(profile.getAsString()));
        String source = text != null ? text.getAsString() : resource.toString();
        checkFormat(request, source);
        return validatorFor(version).validateWithResult(source, options).getMessages();
    }

    /** The library tells JSON from XML by the first character; this holds it to what was said. */
    private static void checkFormat(JsonObject request, String source) {
        String format = request.has("format") ? request.get("format").getAsString() : "json";
        String start = source.stripLeading();
        if (!start.startsWith(format.equals("xml") ? "<" : "{")) {
            throw new JsonParseException("the text is no " + format);
        }
    }

    private static JsonObject issueOf(SingleValidationMessage message) {
        ResultSeverityEnum severity = message.getSeverity();
        return issue(
            severity == null ? "information" : severity.getCode(),
            message.getLocationString(), message.getMessage(), message.getMessageId());
    }

    private static JsonObject issue(String severity, String location, String message, String messageId) {
        JsonObject issue = new JsonObject();
        issue.addProperty("severity", severity);
        issue.addProperty("location", location == null ? "" : location);
        issue.addProperty("message", message);
        issue.addProperty("messageId", messageId == null ? "" : messageId);
        return issue;
    }

    // Made on first use: one version takes seconds and some 300 MB.
    private FhirValidator validatorFor(Version version) {
        return validators.computeIfAbsent(version, this::newValidator);
    }

    private FhirValidator newValidator(Version version) {
        FhirContext context = version.context();
        PrePopulatedValidationSupport own = new PrePopulatedValidationSupport(context);
        for (Path folder : folders.getOrDefault(version, List.of())) {
            try {
                int count = Definitions.load(context, folder, own);
                System.err.println(version + ": " + count + " definitions from " + folder);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
        ValidationSupportChain chain = new ValidationSupportChain(
            new DefaultProfileValidationSupport(context),
            own,
            new CommonCodeSystemsTerminologyService(context),
            new DisplayChecks(context),
            new SnapshotGeneratingValidationSupport(context));
        // A binding asks for one coding of the value set; the library by itself asks all of them to be in it.
        // https://hl7.org/fhir/R4/terminologies.html#4.1
        chain.setCodeableConceptValidationSuccessfulIfNotAllCodingsAreValid(Boolean.getBoolean("anyCoding"));
        FhirInstanceValidator instance = new FhirInstanceValidator(chain);
        // HL7's command line holds an Observation to the profiles that its code implies; this library does not.
        if (Boolean.getBoolean("impliedProfiles")) instance.setValidatorPolicyAdvisor(new ImpliedProfiles());
        instance.setErrorForUnknownProfiles(true);
        instance.setBestPracticeWarningLevel(BestPracticeWarningLevel.Warning);
        return context.newValidator().registerValidatorModule(instance);
    }

    private static final class ImpliedProfiles extends FhirDefaultPolicyAdvisor {
        private final BasePolicyAdvisorForFullValidation full =
            new BasePolicyAdvisorForFullValidation(ReferenceValidationPolicy.IGNORE);

        @Override
        public List<StructureDefinition> getImpliedProfilesForResource(
            IResourceValidator validator, Object appContext, String stackPath, ElementDefinition definition,
            StructureDefinition structure, Element resource, boolean valid, IMessagingServices messages,
            List<ValidationMessage> found) {
            return full.getImpliedProfilesForResource(
                validator, appContext, stackPath, definition, structure, resource, valid, messages, found);
        }
    }
}
