package org.benchtrail.seal;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.benchtrail.core.method.Policy;
import org.benchtrail.core.method.PolicyFingerprint;
import org.benchtrail.core.method.Redecided;
import org.benchtrail.site.PolicyConfig;

/**
 * Records what the server is started with, if it is not what the log says already: by which values entries are decided until the site
 * decides otherwise, which witnesses are asked, and the rules of the method. Each entry names its policy by the fingerprint that stands
 * here beside the values.
 */
@ApplicationScoped
class SettingsRecord {
    private static final String STREAM = "policy";
    private static final String WHAT = "settings";
    private static final int MOST = 200;

    private final LogRows rows;
    private final PolicyConfig policy;
    private final SealConfig seal;
    private final ObjectMapper mapper;
    private volatile Map<String, String> kept = Map.of();

    SettingsRecord(LogRows rows, PolicyConfig policy, SealConfig seal, ObjectMapper mapper) {
        this.rows = rows;
        this.policy = policy;
        this.seal = seal;
        this.mapper = mapper;
    }

    /** Servers that are started differently each record what they were started with once, not in turn. */
    void keep() throws IOException {
        Optional<Path> file = seal.policyFile();
        keep(policy.policy(), file.isEmpty() ? "" : Files.readString(file.get(), StandardCharsets.UTF_8));
    }

    void keep(Policy policy, String witnesses) throws IOException {
        Map<String, String> now = Map.of(
                "policy",
                PolicyFingerprint.of(policy),
                "values",
                PolicyFingerprint.lines(policy),
                "witnesses",
                witnesses,
                "rules",
                Redecided.rules());
        if (now.equals(kept)) {
            return;
        }
        JsonNode content = mapper.valueToTree(now);
        QuarkusTransaction.requiringNew().call(() -> {
            if (!newest().equals(content)) {
                rows.record(STREAM, WHAT, mapper.writeValueAsString(content));
            }
            return 0;
        });
        kept = now;
    }

    private JsonNode newest() throws IOException {
        for (LogRows.SiteRecord record : rows.newest(STREAM, MOST)) {
            JsonNode read = mapper.readTree(record.canonical());
            if (read.path("what").asText().equals(WHAT)) {
                return read.path("content");
            }
        }
        return mapper.missingNode();
    }
}
