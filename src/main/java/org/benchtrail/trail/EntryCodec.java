package org.benchtrail.trail;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.ObjectReader;
import com.fasterxml.jackson.databind.exc.InvalidFormatException;
import com.fasterxml.jackson.databind.exc.UnrecognizedPropertyException;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import java.io.IOException;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.Collections;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeSet;
import java.util.random.RandomGenerator;
import java.util.stream.Stream;
import org.benchtrail.core.integrity.HashChain;
import org.benchtrail.core.method.Channel;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.FactKinds;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.Origin;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Stamp;
import org.jspecify.annotations.Nullable;

/** An entry to its canonical bytes and back. */
final class EntryCodec {
    /**
     * Version of the envelope and of the payloads in it; every version ever written stays readable. Format 2 says how the entry
     * came to be made, and holds a salt, so that the hash of an entry that is easily guessed gives nothing away. In format 3
     * commitments stand in place of somebody's own words, see {@link WrittenWords}; an entry without any is still written in format 2.
     */
    private static final int FORMAT = 3;

    private static final int WITH_ORIGIN = 2;

    private static final String PAYLOAD = "payload";
    private static final int SALT_BYTES = 16;
    private static final SecureRandom RANDOM = new SecureRandom();

    private static final ObjectMapper MAPPER = FactJson.mapper();
    private static final ObjectReader ENVELOPE = MAPPER.readerFor(Envelope.class);

    /** Bytes of entries that are kept read; as objects they take a few times as much. */
    private static final long MOST_KEPT = 8_000_000;

    /**
     * Entries by the hash of their bytes. What the bytes say never changes, and whoever asks has just made sure that the bytes are
     * those of the hash: every stored byte is hashed at every look, but read only at the first.
     */
    private static final Cache<String, Kept> READ = Caffeine.newBuilder()
            .maximumWeight(MOST_KEPT)
            .weigher((String hash, Kept kept) -> kept.bytes())
            .build();

    private EntryCodec() {}

    /** What is hashed: everything but the hash itself. What came with format 2 is null in format 1. */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    private record Envelope(
            int format,
            String ticket,
            int entry,
            String at,
            String actor,
            Set<Role> roles,
            @Nullable Channel channel,
            @Nullable String request,
            @Nullable String policy,
            @Nullable String behalf,
            @Nullable String salt,
            Fact payload,
            String previous) {
        Envelope {
            Stream.of(ticket, at, actor, roles, payload, previous).forEach(Objects::requireNonNull);
            boolean since2 = format >= WITH_ORIGIN;
            if (Stream.of(channel, request, policy, salt).anyMatch(part -> (part != null) != since2)
                    || (behalf != null && !since2)) {
                throw new IllegalArgumentException("parts of another format");
            }
        }

        @Nullable
        Origin origin() {
            return channel == null || request == null || policy == null
                    ? null
                    : new Origin(channel, request, policy, behalf);
        }
    }

    /**
     * @param salt null in format 1
     * @param lacking whether words are not there, so that {@link FreeText#ERASED} stands in their place
     */
    record Decoded(
            String ticket,
            Entry entry,
            String previous,
            @Nullable String salt,
            boolean lacking) {}

    private record Kept(Decoded decoded, int bytes) {}

    /** A new entry. */
    static TrailEntry encode(String ticket, Entry entry, String previous) {
        byte[] salt = new byte[SALT_BYTES];
        RANDOM.nextBytes(salt);
        return encode(
                ticket, entry, previous, Base64.getUrlEncoder().withoutPadding().encodeToString(salt), RANDOM);
    }

    /**
     * @param salt left out of an entry of format 1, which is one whose origin is not known
     * @param chance from which the salts of its words come
     */
    static TrailEntry encode(
            String ticket, Entry entry, String previous, @Nullable String salt, RandomGenerator chance) {
        Stamp stamp = entry.stamp();
        Origin origin = stamp.origin();
        Envelope envelope = new Envelope(
                origin == null ? 1 : WITH_ORIGIN,
                ticket,
                stamp.entry(),
                EntryTime.write(stamp.at()),
                stamp.by(),
                new TreeSet<>(stamp.roles()),
                stamp.channel(),
                origin == null ? null : origin.request(),
                origin == null ? null : origin.policy(),
                origin == null ? null : origin.behalf(),
                origin == null ? null : salt,
                entry.fact(),
                previous);
        ObjectNode written = MAPPER.valueToTree(envelope);
        SortedMap<String, SaltedWords> words = origin == null
                ? Collections.emptySortedMap()
                : WrittenWords.hide(entry.fact(), (ObjectNode) written.path(PAYLOAD), chance);
        if (!words.isEmpty()) {
            written.put("format", FORMAT);
        }
        return stored(entry, CanonicalJson.of(json(written)), WrittenWords.write(words));
    }

    /**
     * An entry as it has to be stored but for its words, by its bytes alone.
     *
     * @throws IllegalArgumentException if they are no entry of a known format
     */
    static TrailEntry stored(byte[] canonical) {
        return stored(decode(canonical, null).entry(), canonical, null);
    }

    private static TrailEntry stored(Entry entry, byte[] canonical, byte @Nullable [] words) {
        Stamp stamp = entry.stamp();
        return new TrailEntry(
                stamp.entry(),
                stamp.at(),
                stamp.by(),
                FactKinds.name(entry.fact().getClass()),
                canonical,
                HashChain.hash(canonical),
                words);
    }

    /**
     * As {@link #decode(byte[], byte[])}, of bytes that were read before as often as not.
     *
     * @param hash of these bytes, which the caller has computed from them
     */
    static Decoded decode(String hash, byte[] canonical, byte @Nullable [] words) {
        String both = words == null ? hash : hash + HashChain.hash(words);
        return READ.get(both, key -> new Kept(decode(canonical, words), canonical.length))
                .decoded();
    }

    /**
     * @param words that belong to these bytes, see {@link WrittenWords#write}; null if none are kept
     * @throws WrittenWords.Altered if they are others than were committed to
     * @throws IllegalArgumentException if the bytes, whatever they are, are no entry of a known format
     */
    static Decoded decode(byte[] canonical, byte @Nullable [] words) {
        try {
            JsonNode tree = MAPPER.readTree(canonical);
            boolean hides = tree.path("format").asInt() >= FORMAT || words != null;
            boolean lacking = hides && WrittenWords.show(tree.path(PAYLOAD), WrittenWords.read(words));
            Envelope envelope = ENVELOPE.readValue(tree);
            if (envelope == null || envelope.format() < 1 || envelope.format() > FORMAT) {
                throw new IllegalArgumentException("not of format 1 to " + FORMAT);
            }
            Stamp stamp = new Stamp(
                    envelope.entry(),
                    EntryTime.read(envelope.at()),
                    envelope.actor(),
                    envelope.roles(),
                    envelope.origin());
            return new Decoded(
                    envelope.ticket(),
                    new Entry(stamp, envelope.payload()),
                    envelope.previous(),
                    envelope.salt(),
                    lacking);
        } catch (WrittenWords.Altered e) {
            // unless it is no entry at all
            decode(canonical, null);
            throw e;
        } catch (IOException | RuntimeException e) {
            throw new IllegalArgumentException("not a readable entry: " + e.getMessage(), e);
        }
    }

    /**
     * Whether bytes that are no entry look like one of a later release, which follows that hash: of a later format, of a kind, or of a
     * kind with a component or a word of a choice, that this one does not know.
     */
    static boolean isNewer(byte[] canonical, String previous) {
        try {
            JsonNode tree = MAPPER.readTree(canonical);
            return tree.path("previous").asText().equals(previous)
                    && (tree.path("format").asInt() > FORMAT
                            || (tree.at("/payload/kind").isTextual()
                                    && (!FactKinds.all()
                                                    .containsKey(tree.at("/payload/kind")
                                                            .asText())
                                            || hasMore(tree))));
        } catch (IOException | RuntimeException none) {
            return false;
        }
    }

    private static boolean hasMore(JsonNode tree) throws IOException {
        try {
            WrittenWords.show(tree.path(PAYLOAD), Map.of());
            ENVELOPE.readValue(tree);
            return false;
        } catch (UnrecognizedPropertyException component) {
            return true;
        } catch (InvalidFormatException word) {
            return word.getTargetType().isEnum();
        }
    }

    private static String json(JsonNode envelope) {
        try {
            return MAPPER.writeValueAsString(envelope);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("an entry is plain data", e);
        }
    }
}
