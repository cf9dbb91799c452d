package org.benchtrail.operations;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** What is said in the files for containers and systemd fits the program and its README. */
class DeployFilesTest {
    private static final Path DEPLOY = Path.of("src/main/deploy");
    private static final Pattern VARIABLE = Pattern.compile("\\b(?:BENCHTRAIL|QUARKUS)_[A-Z_]+\\b");

    /** An address that only the compose file itself uses. */
    private static final Set<String> OWN = Set.of("BENCHTRAIL_PROXY");

    private static String text(String file) throws IOException {
        return Files.readString(DEPLOY.resolve(file));
    }

    @Test
    void everyVariable_isInTheReadme() throws IOException {
        String readme = Files.readString(Path.of("README.md"));
        Set<String> unknown = new TreeSet<>();
        for (String file :
                List.of("Containerfile", "compose.yaml", "benchtrail.service", "environment.example", "roles.sh")) {
            VARIABLE.matcher(text(file)).results().map(found -> found.group()).forEach(unknown::add);
        }
        assertTrue(unknown.size() > 8, unknown.toString());
        unknown.removeAll(OWN);
        unknown.removeIf(readme::contains);
        assertEquals(Set.of(), unknown);
    }

    @Test
    void serverInTheComposeFile_hasNoPasswordOfTheOwner_andTimeToEnd() throws IOException {
        JsonNode services = new YAMLMapper().readTree(text("compose.yaml")).get("services");
        JsonNode server = services.get("server");
        assertFalse(server.get("environment").toString().contains("OWNER"));
        assertTrue(services.at("/migrate/environment").has("BENCHTRAIL_OWNER_PASSWORD"));
        assertEquals("migrate", services.at("/migrate/command/0").asText());
        assertEquals(
                "service_completed_successfully",
                server.at("/depends_on/migrate/condition").asText());
        int grace = Integer.parseInt(server.get("stop_grace_period").asText().replace("s", ""));
        String properties = Files.readString(Path.of("src", "main", "resources", "application.properties"));
        int ends = Integer.parseInt(properties.replaceAll("(?s).*quarkus\\.shutdown\\.timeout=(\\d+)S.*", "$1"));
        assertTrue(grace > ends + 3, grace + " s are less than it may take to end");
        server.get("ports").forEach(port -> assertTrue(port.asText().startsWith("127.0.0.1:"), port.asText()));
    }

    @Test
    void unit_givesTimeToEnd_andTakesRightsAway() throws IOException {
        List<String> lines = text("benchtrail.service").lines().toList();
        assertTrue(lines.containsAll(
                List.of("NoNewPrivileges=yes", "ProtectSystem=strict", "CapabilityBoundingSet=", "TimeoutStopSec=40")));
        assertTrue(lines.stream().anyMatch(line -> line.startsWith("ExecStart=/") && line.endsWith("quarkus-run.jar")));
    }
}
