import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.parser.DataFormatException;
import ca.uhn.fhir.parser.IParser;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.hl7.fhir.common.hapi.validation.support.PrePopulatedValidationSupport;
import org.hl7.fhir.instance.model.api.IBaseResource;

/** Profiles, extensions, code systems and value sets read from a folder of JSON files. */
final class Definitions {
    private static final List<String> TYPES = List.of("StructureDefinition", "ValueSet", "CodeSystem");
    // The type stands first in published files and in ours; 4,000 characters are room for any order met.
    private static final int HEAD = 4_000;
    private static final Pattern TYPE = Pattern.compile("\"resourceType\"\\s*:\\s*\"(\\w+)\"");

    private Definitions() {}

    /** Adds every definition in `folder` (not below it) to `support`; returns how many there were. */
    static int load(FhirContext context, Path folder, PrePopulatedValidationSupport support) throws IOException {
        IParser parser = context.newJsonParser();
        List<Path> files;
        try (Stream<Path> found = Files.list(folder)) {
            files = found.filter(file -> file.toString().endsWith(".json")).sorted().toList();
        }
        int count = 0;
        for (Path file : files) {
            if (!TYPES.contains(typeOf(file))) continue;
            try (BufferedReader reader = Files.newBufferedReader(file)) {
                IBaseResource definition = parser.parseResource(reader);
                support.addResource(definition);
                count++;
            } catch (DataFormatException e) {
                throw new IOException("cannot read " + file + " as a definition: " + e.getMessage(), e);
            }
        }
        return count;
    }

    private static String typeOf(Path file) throws IOException {
        try (BufferedReader reader = Files.newBufferedReader(file)) {
            char[] head = new char[HEAD];
            int length = Math.max(0, reader.read(head));
            var match = TYPE.matcher(new String(head, 0, length));
            return match.find() ? match.group(1) : "";
        }
    }
}
