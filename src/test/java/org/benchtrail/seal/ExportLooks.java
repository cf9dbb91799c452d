package org.benchtrail.seal;

import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.benchtrail.core.integrity.Checkpoint;
import org.benchtrail.seal.offline.VerifyCommand;
import org.jspecify.annotations.Nullable;

/** What the verifier finds in an export of a database that other tests have altered as well. */
final class ExportLooks {
    private ExportLooks() {}

    /**
     * Findings but those of tickets that are none of the test's, which other tests altered and left so.
     *
     * @param earlier a head that has to be contained
     * @param own streams that the test answers for, each with a blank or a slash at its end
     */
    static List<String> at(Path export, @Nullable Checkpoint earlier, String... own) {
        List<String> words = new ArrayList<>(List.of(export.toString(), "--json"));
        if (earlier != null) {
            words.add("--earlier");
            words.add(earlier.size() + ":" + earlier.root().base64());
        }
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        int exit = VerifyCommand.run(words, new PrintStream(out, true, StandardCharsets.UTF_8));
        String said = out.toString(StandardCharsets.UTF_8);
        assertTrue(exit != 3, said);
        try {
            JsonNode answer = new ObjectMapper().readTree(said);
            if (earlier != null) {
                assertTrue(
                        said.contains("The earlier head of " + earlier.size() + " leaves that you gave is contained."),
                        said);
            }
            List<String> found = new ArrayList<>();
            answer.path("findings").forEach(finding -> {
                String where = finding.path("where").asText();
                boolean others =
                        where.startsWith("ticket/") && List.of(own).stream().noneMatch(where::startsWith);
                if (!others) {
                    found.add(finding.toString());
                }
            });
            return found;
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(said, e);
        }
    }
}
