package org.benchtrail.seal;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.KeyPair;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.integrity.KeyHistory;
import org.benchtrail.core.integrity.SigningKey;
import org.benchtrail.core.integrity.VerifierKey;
import org.jspecify.annotations.Nullable;

/**
 * The keys of the log, as its stream {@code keys} tells: the first with the origin, each further one signed by one that was good, and
 * those that are retired.
 */
@ApplicationScoped
class LogKeys {
    static final String STREAM = "keys";

    private static final int MOST = 1000;
    private static final int ORIGIN_BYTES = 8;

    private final LogRows rows;
    private final SealConfig config;
    private final ObjectMapper mapper;

    LogKeys(LogRows rows, SealConfig config, ObjectMapper mapper) {
        this.rows = rows;
        this.config = config;
        this.mapper = mapper;
    }

    /** What the stream tells. */
    KeyHistory known() {
        Map<Long, Long> leaves = rows.places(STREAM).stream()
                .collect(Collectors.toMap(LogRows.PlaceRow::place, LogRows.PlaceRow::index));
        return KeyHistory.of(rows.records(STREAM, 0, MOST).stream()
                .map(record -> told(content(record), leaves.get(record.place())))
                .toList());
    }

    private static KeyHistory.Told told(JsonNode content, @Nullable Long leaf) {
        return new KeyHistory.Told(
                content.path("act").asText(),
                content.path("key").asText(),
                content.path("origin").asText(),
                content.path("signature").asText(),
                leaf);
    }

    private JsonNode content(LogRows.SiteRecord record) {
        try {
            return mapper.readTree(record.canonical()).path("content");
        } catch (IOException e) {
            throw new IllegalStateException("record " + record.place() + " of " + STREAM + " cannot be read", e);
        }
    }

    /**
     * The keys that sign, as the settings name them; what is new or gone is recorded in the running transaction.
     *
     * @return empty if the settings name no key
     * @throws SealStopped if a key cannot be used, or this log does not know any of them
     */
    List<SigningKey> signing() {
        List<Path> files = Stream.of(config.keyFile(), config.nextKeyFile())
                .flatMap(Optional::stream)
                .toList();
        if (files.isEmpty()) {
            return List.of();
        }
        KeyHistory known = known();
        String origin = known.origin() == null ? config.origin().orElseGet(LogKeys::madeUp) : known.origin();
        List<SigningKey> keys = new ArrayList<>();
        for (Path file : files) {
            boolean next = config.nextKeyFile().filter(file::equals).isPresent();
            keys.add(new SigningKey(origin, VerifierKey.LOG, pair(file, next || known.origin() == null)));
        }
        record(known, keys);
        return keys;
    }

    private static String madeUp() {
        byte[] random = new byte[ORIGIN_BYTES];
        new SecureRandom().nextBytes(random);
        return "site-" + HexFormat.of().formatHex(random) + ".benchtrail.invalid/log";
    }

    private static KeyPair pair(Path file, boolean made) {
        try {
            if (Files.notExists(file) && made) {
                return KeyFile.make(file);
            }
            return KeyFile.read(file);
        } catch (IOException e) {
            throw new SealStopped("The key file " + file + " cannot be read. Put it back from where you keep a copy.");
        } catch (KeyFile.Unusable e) {
            throw new SealStopped(String.valueOf(e.getMessage()));
        }
    }

    private void record(KeyHistory known, List<SigningKey> keys) {
        List<String> named = keys.stream().map(key -> key.verifier().toString()).toList();
        if (known.origin() == null) {
            String origin = keys.get(0).verifier().name();
            note(Map.of("act", "made", "key", named.get(0), "origin", origin));
            known = known();
        }
        KeyHistory before = known;
        SigningKey voucher = keys.stream()
                .filter(key -> before.good().contains(key.verifier().toString()))
                .findFirst()
                .orElseThrow(() ->
                        new SealStopped("This log does not know the key that the settings name. Name the key it was"
                                + " signed with, and the new one as the key that follows."));
        named.stream()
                .filter(key -> !before.good().contains(key))
                .forEach(key -> note(Map.of(
                        "act",
                        "added",
                        "key",
                        key,
                        "signature",
                        voucher.sign(KeyHistory.vouched(key)).toString())));
        before.good().stream()
                .filter(key -> !named.contains(key))
                .forEach(key -> note(Map.of("act", KeyHistory.RETIRED, "key", key)));
    }

    private void note(Map<String, String> content) {
        try {
            rows.record(STREAM, "key", mapper.writeValueAsString(content));
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("strings are JSON", e);
        }
    }
}
